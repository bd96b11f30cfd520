"""Our own statics against Shapely, NumPy and closed forms."""
