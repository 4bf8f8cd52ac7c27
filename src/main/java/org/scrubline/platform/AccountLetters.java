package org.scrubline.platform;

import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What stands in mail about getting into an account; for whoever sends it, within a tenant scope. */
public interface AccountLetters {

    /** What {@link #forgotten} compares: the SHA-256 of a name or address without case and outer white space. */
    static String asked(String typed) {
        return Sha256.hex(FreeText.tidy(typed).toLowerCase(java.util.Locale.ROOT));
    }

    /**
     * Makes a code for each account of this organisation that is asked for and has a confirmed address, at most a few an
     * hour for each.
     *
     * @param asked see {@link #asked}
     */
    List<Letter> forgotten(String asked);

    /** Makes a code for the address that waits to be confirmed, if one does. */
    Optional<Letter> confirm(UUID account);

    /** The confirmed address, if there is one. */
    Optional<String> address(UUID account);

    /** One mail: this is the one moment the code can be read. */
    record Letter(String address, String username, String code) {}
}
