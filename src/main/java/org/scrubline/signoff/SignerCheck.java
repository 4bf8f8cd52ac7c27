package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.springframework.stereotype.Component;

/**
 * Recognises a signer: the statement of what a signature means accepted, and the credential given afresh. Called outside
 * any transaction, because a slow password hash must not hold a connection.
 */
@Component
public class SignerCheck {

    /** Field of a refusal that accepting the statement mends. */
    public static final String STATEMENT = "statement";

    private final SigningStatements statements;
    private final Accounts accounts;

    SignerCheck(SigningStatements statements, Accounts accounts) {
        this.statements = statements;
        this.accounts = accounts;
    }

    /** By password alone. */
    public Attempt<UUID> confirm(SignedIn who, String password) {
        return accepted(who) ? accounts.confirmPassword(who.accountId(), password) : Attempt.refused(statement());
    }

    /** {@code challenge} is the hash a passkey must have signed, 32 bytes. */
    public Attempt<Recognised> confirm(SignedIn who, Credential credential, byte[] challenge) {
        return accepted(who) ? accounts.confirm(who.accountId(), credential, challenge) : Attempt.refused(statement());
    }

    private boolean accepted(SignedIn who) {
        return statements.accepted(who.personId());
    }

    private static Refusal statement() {
        return Refusal.at(STATEMENT, "signoff.refusal.statement");
    }
}
