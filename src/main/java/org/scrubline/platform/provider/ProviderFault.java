package org.scrubline.platform.provider;

import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.security.core.AuthenticationException;

/** A log-in through a provider led to nobody. */
public class ProviderFault extends AuthenticationException {

    private final Reason reason;

    /** Why; the name in small letters is the end of a message key. */
    public enum Reason {
        /** The provider gave no answer. */
        UNREACHABLE,
        /** Its answer was a no, or is not to be trusted. */
        REFUSED,
        /** It vouches for somebody no account is connected to. */
        UNKNOWN,
        /** The invitation code is not good, or the person is connected to another account. */
        TAKEN;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Reason> of(@Nullable String word) {
            for (Reason reason : values()) {
                if (reason.word().equals(word)) {
                    return Optional.of(reason);
                }
            }
            return Optional.empty();
        }
    }

    public ProviderFault(Reason reason) {
        super("provider: " + reason);
        this.reason = reason;
    }

    ProviderFault(Reason reason, Throwable cause) {
        super("provider: " + reason, cause);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
