"""The build: from the calculators and the pages to a site that works with no server."""
