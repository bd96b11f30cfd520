"""The sample houses: what they hold and whether their parts fit, never what comes out of them."""
