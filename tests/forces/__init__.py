"""Forces: worked cases, equilibrium in both directions and about any point, and the gravity take-down."""
