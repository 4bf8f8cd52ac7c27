package org.scrubline.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.scrubline.backup.file.Passphrase;

/**
 * The options of the commands that concern a whole installation.
 *
 * @param file the backup file
 * @param passphraseFile whose first line seals or opens it
 * @param settings options the server would take too, as {@code --name=value}
 */
record InstallationOptions(Path file, Optional<Path> passphraseFile, List<String> settings) {

    /** Wrong use of the line; the message is a sentence for the user. */
    static final class WrongUse extends RuntimeException {
        WrongUse(String message) {
            super(message);
        }
    }

    /**
     * @param fileOption the option that names the backup file
     * @throws WrongUse unknown or incomplete options
     */
    static InstallationOptions parse(List<String> args, String fileOption) {
        Optional<Path> file = Optional.empty();
        Optional<Path> passphraseFile = Optional.empty();
        List<String> settings = new ArrayList<>();
        for (Iterator<String> i = args.iterator(); i.hasNext(); ) {
            String option = i.next();
            if (option.equals(fileOption)) {
                file = Optional.of(path(option, i));
            } else if (option.equals("--passphrase-file")) {
                passphraseFile = Optional.of(path(option, i));
            } else if (option.matches("--(scrubline|spring)\\.[^=]+=.*")) {
                settings.add(option);
            } else {
                throw new WrongUse("there is no option " + option + " here.");
            }
        }
        return new InstallationOptions(
                file.orElseThrow(() -> new WrongUse(fileOption + " FILE is missing.")), passphraseFile, settings);
    }

    Optional<Passphrase> passphrase() {
        return passphraseFile.map(Passphrase::of);
    }

    private static Path path(String option, Iterator<String> rest) {
        String name = rest.hasNext() ? rest.next() : "--";
        if (name.startsWith("--")) {
            throw new WrongUse(option + " needs a file.");
        }
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            throw new WrongUse(option + ": " + name + " is not a usable file name.");
        }
    }
}
