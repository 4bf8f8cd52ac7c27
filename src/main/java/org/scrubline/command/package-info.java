/**
 * The command line: analysis of files without a server, verification of the ledger, backup and restore. A command reads
 * its arguments and files, calls the room that does the work, and prints; it holds no rules of its own.
 */
@ApplicationModule(displayName = "Command line")
@NullMarked
package org.scrubline.command;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
