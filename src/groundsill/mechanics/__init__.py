"""Our own statics, standard library only: plan geometry, strips between supports, pressure under a footing.

`plan` areas and centroids · `supports` and `strips` floor shared between them · `equilibrium` line forces that hold a
floor · `footing` pressure under an eccentric load · `collector` the force along a line that floor feeds and walls
drain · `triangles` between scattered points. Tests hold it to Shapely, NumPy, SciPy and closed forms.
"""
