package org.scrubline.casework.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;

/**
 * The end of a case as typed by the clock of its site. A time the clock skipped is refused; one it showed twice is
 * asked about.
 */
final class LocalEnd {

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter WITH_ZONE = DateTimeFormatter.ofPattern("HH:mm z (O)", Locale.UK);

    private LocalEnd() {}

    /** What an empty field starts with. */
    static String now(Instant now, ZoneId zone) {
        return LocalDateTime.ofInstant(now, zone)
                .truncatedTo(ChronoUnit.MINUTES)
                .toString();
    }

    /**
     * The instant meant.
     *
     * @param typed such as 2026-03-12T18:40
     * @param offset which of two equal times was meant, such as Z or +01:00; empty when not asked
     */
    static Attempt<Instant> read(String typed, String offset, ZoneId zone) {
        Optional<LocalDateTime> parsed = parse(typed);
        if (parsed.isEmpty()) {
            return Attempt.refused(Refusal.at("endedAt", "refusal.case.end.form"));
        }
        LocalDateTime local = parsed.get();
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            ZoneOffsetTransition gap = zone.getRules().getTransition(local);
            return Attempt.refused(Refusal.at(
                    "endedAt",
                    "refusal.case.end.gap",
                    CLOCK.format(local),
                    CLOCK.format(gap.getDateTimeBefore()),
                    CLOCK.format(gap.getDateTimeAfter())));
        }
        if (offsets.size() == 1) {
            return Attempt.done(local.toInstant(offsets.get(0)));
        }
        return offsets.stream()
                .filter(candidate -> candidate.getId().equals(offset))
                .findFirst()
                .map(meant -> Attempt.done(local.toInstant(meant)))
                .orElseGet(() ->
                        Attempt.refused(Refusal.at("endedOffset", "refusal.case.end.twice", CLOCK.format(local))));
    }

    /** Both readings of a time the clock showed twice, the earlier first; empty for every other time. */
    static List<Option> readings(String typed, ZoneId zone) {
        return parse(typed)
                .map(local -> zone.getRules().getValidOffsets(local).stream()
                        .map(offset ->
                                Option.of(offset.getId(), WITH_ZONE.format(ZonedDateTime.ofLocal(local, zone, offset))))
                        .toList())
                .filter(readings -> readings.size() > 1)
                .orElseGet(List::of);
    }

    private static Optional<LocalDateTime> parse(String typed) {
        try {
            return Optional.of(LocalDateTime.parse(typed.strip()));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
