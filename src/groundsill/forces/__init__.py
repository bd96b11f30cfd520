"""What the earthquake asks of the house, and what its weight does before any earthquake.

The weights item by item, the gravity take-down to every wall line, girder, post and footing from those same items, the
base shear of the basis the house file pins, and the share of each braced line that is relied on. Shares balance the
whole in x, in y and in moment.

Standard library only. Formulas come from ``standards``; nothing is defined twice here.
"""
