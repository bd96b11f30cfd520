"""The chain of each braced line: link by link from the floor through ties, panels, sill and bolts to the soil.

One module for each link. A link has a permanent address, a demand, a capacity and a status: passes, fails, indicated,
cannot be checked, or does not apply, with the reason. A stage combines its links by its own rule, a chain is an ordered
series of stages, and the weakest link is named, as found and as designed.

Standard library only. This room chooses and combines published equations and never defines one.
"""
