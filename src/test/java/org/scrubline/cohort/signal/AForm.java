package org.scrubline.cohort.signal;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.scrubline.scoring.curve.CaseBand;

/** A signed sheet as the rules read it: an hour after a plain case of trainee T, scored by supervisor S. */
final class AForm {

    private static final Instant START = Instant.parse("2026-01-05T12:00:00Z");

    private final String id;
    private final Map<String, Integer> levels = new HashMap<>();
    private String trainee = "T";
    private String scorer = "S";
    private int day;
    private Duration delay = Duration.ofHours(1);

    private AForm(String id) {
        this.id = id;
    }

    static AForm of(String id) {
        return new AForm(id);
    }

    AForm about(String other) {
        trainee = other;
        return this;
    }

    AForm by(String other) {
        scorer = other;
        return this;
    }

    AForm day(int other) {
        day = other;
        return this;
    }

    AForm after(Duration other) {
        delay = other;
        return this;
    }

    AForm level(String step, int level) {
        levels.put(step, level);
        return this;
    }

    /** Ten steps at these levels, in turn. */
    AForm steps(int... others) {
        for (int i = 0; i < 10; i++) {
            levels.put("S" + i, others[i % others.length]);
        }
        return this;
    }

    SignedForm build() {
        Instant ended = START.plus(Duration.ofDays(day));
        return new SignedForm(
                id, "case " + id, trainee, scorer, "TRAB_FORNIX", ended, ended.plus(delay), CaseBand.A, levels, true);
    }
}
