"""Documents, drawings and their writers: read back with other people's programs, never only by our own."""
