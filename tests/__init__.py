"""The tests, in folders that mirror the package; see CONTRIBUTING.md for what each kind may claim."""
