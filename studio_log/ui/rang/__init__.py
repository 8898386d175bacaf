"""What rang: every reminder that rang, how, and how it was answered."""
