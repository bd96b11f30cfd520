"""The command line: what each command says, to whom, and with which exit code."""
