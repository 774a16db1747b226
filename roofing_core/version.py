"""The version of the library and of the service, said once."""

VERSION = "0.1.0"
