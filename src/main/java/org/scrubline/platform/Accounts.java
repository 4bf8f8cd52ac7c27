package org.scrubline.platform;

import java.util.UUID;

/** Log-in accounts. They are global and never re-used; what a person may do is kept per organisation elsewhere. */
public interface Accounts {

    /** Whether any account exists yet; none means a first start. */
    boolean none();

    /**
     * Opens an account that cannot log in until a password is set.
     *
     * @param username 3 to 60 letters, digits, dots, hyphens or underscores; compared without case
     * @return its id, or why the name cannot be taken
     */
    Attempt<UUID> open(String username, UUID tenantId);

    /** The same for an account several people use, as on a theatre computer: it can prepare and read, never sign. */
    Attempt<UUID> openShared(String username, UUID tenantId);

    /**
     * A one-time code for choosing a password. It ends every code made for the account before.
     *
     * @return the code; only its hash is stored, so this is the one moment to print it
     * @throws IllegalStateException when the account has a password: nobody else chooses it anew
     */
    String invite(UUID accountId, InvitationLife life);

    /** Uses up an invitation and sets the password. */
    Attempt<UUID> acceptInvitation(String code, String password);

    /**
     * Sets the password of a new account without an invitation (first start, demo).
     *
     * @throws IllegalStateException when it has one: nobody sets the password of somebody else
     */
    Attempt<UUID> setFirstPassword(UUID accountId, String password);

    /**
     * Checks a re-entered password. Failures count toward the same throttle as log-in; once it blocks,
     * {@link RepeatedWrongPassword} is published. A closed account is refused whatever the password.
     *
     * @return done when it is right, otherwise the reason to show
     */
    Attempt<UUID> confirmPassword(UUID accountId, String password);

    /**
     * Checks a credential shown anew. Failures of both kinds count toward the same throttle as log-in; it holds back
     * passwords only, since a signature cannot be guessed.
     *
     * @param challenge the 32 bytes a passkey must have signed, see {@link CanonicalJson#hashBytes}; a password does not
     *     depend on them
     * @return who it is and by what, otherwise the reason to show
     */
    Attempt<Recognised> confirm(UUID accountId, Credential credential, byte[] challenge);
}
