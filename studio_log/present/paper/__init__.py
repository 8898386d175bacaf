"""Papers for the wall and the folder: what stands on them and where, in mm."""
