package org.scrubline.command;

import picocli.CommandLine.Command;

/** The line before its command. */
@Command(
        name = "scrubline",
        separator = " ",
        synopsisSubcommandLabel = "COMMAND",
        commandListHeading = "%nCommands (serve when none is named):%n",
        footer = "%nCOMMAND --help says more. Exit codes: 0 fine, 1 found a problem, 2 wrong use.")
final class TopCommand implements Runnable {

    @Override
    public void run() {
        throw new WrongUse("Name a command.");
    }
}
