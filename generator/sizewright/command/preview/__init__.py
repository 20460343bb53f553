"""In: a project that is being written. Out: its site on loopback, rebuilt and reloaded as the source is saved."""
