package org.scrubline.platform;

import java.time.Duration;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** How long an invitation can be used. The shortest is what nobody has to choose (decision 0033). */
public enum InvitationLife {
    DAY(1),
    THREE_DAYS(3),
    WEEK(7);

    private final Duration time;

    InvitationLife(int days) {
        this.time = Duration.ofDays(days);
    }

    public Duration time() {
        return time;
    }

    public String messageKey() {
        return "people.invitation." + name();
    }

    /** What a form says; nothing said is the shortest. */
    public static Attempt<InvitationLife> chosen(@Nullable String typed) {
        if (typed == null || typed.isBlank()) {
            return Attempt.done(DAY);
        }
        return Arrays.stream(values())
                .filter(life -> life.name().equals(typed))
                .findFirst()
                .<Attempt<InvitationLife>>map(Attempt::done)
                .orElseGet(() -> Attempt.refused(Refusal.at("life", "refusal.invitation.life")));
    }
}
