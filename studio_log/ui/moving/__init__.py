"""The studio moved out and in: export, import of folders and of old notebooks."""
