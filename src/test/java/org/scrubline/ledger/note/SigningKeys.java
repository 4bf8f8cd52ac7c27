package org.scrubline.ledger.note;

/** Keys for tests. */
public final class SigningKeys {

    private SigningKeys() {}

    /** A key nobody knows. */
    public static SigningKey fresh() {
        return SigningKey.fresh();
    }
}
