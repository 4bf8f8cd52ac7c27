package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.StaleData;
import org.springframework.stereotype.Component;

/** Fixes signed rows in the ledger together with the signature of the passkey, if it was one. */
@Component
class SignedEvidence {

    private final Ledger ledger;
    private final Assertions assertions;

    SignedEvidence(Ledger ledger, Assertions assertions) {
        this.ledger = ledger;
        this.assertions = assertions;
    }

    /** The last act of the transaction that added the rows; {@code how} is null where nobody was asked. */
    void fix(LeafKind kind, UUID record, @Nullable Recognised how) {
        ledger.append(kind, record);
        if (how != null) {
            assertions.keep(kind, record, how);
        }
    }

    /**
     * Requires that a passkey signed what is about to be stored.
     *
     * @param back where to read what the record is now
     * @throws StaleData when it signed something else: the record moved on since the form was shown
     */
    static void requireIntended(@Nullable Recognised how, Intent intent, String back) {
        if (how instanceof Recognised.ByPasskey passkey) {
            String signed = passkey.assertion().challenge();
            String now = Base64Url.text(CanonicalJson.hashBytes(intent.hash()));
            if (!signed.equals(now)) {
                throw new StaleData(back, List.of(new StaleData.Line("SHA-256", signed, now)));
            }
        }
    }
}
