package org.scrubline.platform;

/** What a person shows to be recognised anew at the moment of signing. */
public sealed interface Credential {

    /** A password as typed; may be empty. */
    record Password(String text) implements Credential {

        /** Keeps the password out of any log. */
        @Override
        public String toString() {
            return "Password";
        }
    }

    /**
     * A passkey's answer to a challenge.
     *
     * @param json what the browser sent, an AuthenticationResponseJSON (Web Authentication Level 3, section 5.1); not
     *     checked in any way
     */
    record PasskeyAssertion(String json) implements Credential {}

    /** What a form was sent with: the passkey's answer if there is one, otherwise the password. */
    static Credential of(String password, String assertion) {
        return assertion.isBlank() ? new Password(password) : new PasskeyAssertion(assertion);
    }
}
