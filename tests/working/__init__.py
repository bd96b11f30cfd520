"""The room of numbers that show their working: what it promises, and every way in which it refuses."""
