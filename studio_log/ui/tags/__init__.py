"""Tags on paper: painting, the PDF, and the dialog that prints them."""
