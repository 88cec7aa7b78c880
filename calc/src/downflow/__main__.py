"""`python -m downflow`."""

import sys

from downflow.cli import main

sys.exit(main())
