package org.scrubline.command;

import java.io.PrintStream;
import java.util.Map;

/**
 * Where a command speaks and listens.
 *
 * @param out results
 * @param err messages and problems
 * @param environment variables, for settings of the server
 */
record Terminal(PrintStream out, PrintStream err, Map<String, String> environment) {}
