package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.people.Person;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.SignedIn;

/**
 * New versions of signed sheets. Everything here answers {@code NotFound} for a record this person may not read, and for
 * doing what is somebody else's to do.
 */
public interface Versions {

    /** Fewest characters of a reason. */
    int SHORTEST_REASON = 20;

    /** Most characters of a reason. */
    int LONGEST_REASON = 500;

    /** Every version of a sheet and what was said about it, by the id of any of its versions. */
    RecordHistory history(SignedIn who, UUID recordId);

    /**
     * Opens the next version. The sheet is filled from the version that counts, which goes on counting until the new one
     * is signed. Opening it again with the same reason changes nothing.
     *
     * @param recordId any version of the sheet
     * @return id of the sheet, or why it cannot be opened
     */
    Attempt<UUID> open(SignedIn who, UUID recordId, String reason);

    /** Drops the version this person is writing, without a trace. Nothing happens when there is none. */
    void drop(SignedIn who, UUID recordId);

    /** Who could sign new versions in place of a person who has left; empty while that person is still there. */
    List<Person> delegates(SignedIn director, UUID recordId);

    /** Names one of them; a version the person before was writing is dropped. */
    Attempt<Statement> nameDelegate(SignedIn director, UUID recordId, UUID delegate, Signature signature);

    /**
     * What is typed under a statement.
     *
     * @param text the reason
     * @param credential shown again for this statement
     * @param intended hash of the {@link Intent} a passkey was asked to sign; a password does not depend on it
     */
    record Signature(String text, Credential credential, String intended) {

        /** Signed with a password. */
        public static Signature byPassword(String text, String password) {
            return new Signature(text, new Credential.Password(password), "");
        }
    }
}
