"""What the windows about kept things share: baths, swatches and trials, each with a journal."""
