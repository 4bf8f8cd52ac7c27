package org.scrubline.signoff;

import java.util.Optional;
import java.util.function.Function;
import org.scrubline.platform.Accounts;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Credential;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Versions.Signature;
import org.springframework.stereotype.Component;

/**
 * The one way a signer is recognised: an account that may sign, the statement of what a signature means accepted, and the
 * credential given afresh. Called outside any transaction, because a slow password hash must not hold a connection.
 */
@Component
public class SignerCheck {

    /** Field of a refusal that accepting the statement mends. */
    public static final String STATEMENT = "statement";

    private final SigningAuthority authority;
    private final SigningStatements statements;
    private final Accounts accounts;

    SignerCheck(SigningAuthority authority, SigningStatements statements, Accounts accounts) {
        this.authority = authority;
        this.statements = statements;
        this.accounts = accounts;
    }

    /** {@code hash} is what a passkey must have signed, in hexadecimal; a password does not depend on it. */
    public Attempt<Recognised> confirm(SignedIn who, Credential credential, String hash) {
        return against(who)
                .map(Attempt::<Recognised>refused)
                .orElseGet(() -> accounts.confirm(who.accountId(), credential, CanonicalJson.hashBytes(hash)));
    }

    /** Recognises who says something, and hands on what they say. */
    <T> Attempt<T> confirm(SignedIn who, Signature signature, Function<Spoken, Attempt<T>> then) {
        String text = FreeText.tidy(signature.text());
        return confirm(who, signature.credential(), signature.intended())
                .fold(how -> then.apply(new Spoken(text, how)), Attempt::refused);
    }

    private Optional<Refusal> against(SignedIn who) {
        return authority
                .standing(who.personId())
                .or(() -> statements.accepted(who.personId())
                        ? Optional.empty()
                        : Optional.of(Refusal.at(STATEMENT, "signoff.refusal.statement")));
    }
}
