package org.scrubline.casework;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.Audited;
import org.scrubline.platform.SignedIn;

/**
 * A case was logged or changed.
 *
 * @param about the trainee it concerns
 */
record CaseChanged(
        String action,
        UUID actor,
        UUID about,
        UUID programme,
        Item item,
        @Nullable String reason,
        @Nullable String before,
        @Nullable String after)
        implements Audited {

    static CaseChanged of(String action, SignedIn who, SurgicalCase found, UUID trainee) {
        return new CaseChanged(
                action,
                who.personId(),
                trainee,
                found.programmeId(),
                new Item("case", found.id(), null, found.reference()),
                null,
                null,
                null);
    }

    /** What a device sent was put away by its trainee without becoming a case. */
    static CaseChanged putAway(SignedIn trainee, CaseAside away) {
        return new CaseChanged(
                "case-put-away",
                trainee.personId(),
                trainee.personId(),
                away.programmeId(),
                new Item("case-from-device", away.id(), null, away.reference()),
                null,
                null,
                null);
    }

    CaseChanged because(String why) {
        return new CaseChanged(action, actor, about, programme, item, why, before, after);
    }

    CaseChanged from(String value) {
        return new CaseChanged(action, actor, about, programme, item, reason, value, after);
    }

    CaseChanged to(String value) {
        return new CaseChanged(action, actor, about, programme, item, reason, before, value);
    }
}
