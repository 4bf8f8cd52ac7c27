package org.scrubline.command;

import picocli.CommandLine.Command;

/** {@code serve}, for its help alone: Spring reads the line of a server that starts. */
@Command(
        name = "serve",
        description = "The web server (default).",
        customSynopsis = "scrubline [serve] [--spring.profiles.active=demo] [--server.port=8080]"
                + " [--scrubline.data-directory=DIR]",
        footer = "Takes every setting of README.md as --name=value or from the environment.")
final class ServeCommand {}
