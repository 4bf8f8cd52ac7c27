package org.scrubline.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Unmatched;

/** A command on an installation: besides its own options it takes the settings of the server. */
abstract class ServerCommand implements Callable<Integer> {

    /** What the help of each says about them. */
    static final String SETTINGS = "Settings are those of the server, as --scrubline.data-directory=DIR or"
            + " --spring.datasource.url=URL on the line or in the environment.";

    final Terminal terminal;

    @Unmatched
    private List<String> unmatched = new ArrayList<>();

    ServerCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    /** @throws WrongUse when the line holds something else that the command does not know */
    final ServerSettings settings() {
        return new ServerSettings(unmatched, terminal.environment());
    }
}
