package org.scrubline.outcome.web;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.Content;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.Pressure;
import org.scrubline.outcome.SuccessSet;
import org.scrubline.outcome.Tally;
import org.scrubline.outcome.Visit;
import org.scrubline.people.Programme;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Rubrics;
import org.scrubline.scoring.estimate.Interval;
import org.springframework.stereotype.Component;

/** Says the values of outcomes in words. */
@Component
class OutcomeWords {

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu", Locale.UK);
    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);
    private static final double PERCENT = 100;

    private final Wording wording;
    private final Rubrics rubrics;

    OutcomeWords(Wording wording, Rubrics rubrics) {
        this.wording = wording;
        this.rubrics = rubrics;
    }

    String say(String key, Object... arguments) {
        return wording.text(key, arguments);
    }

    /** A constant's words: the name of its type, then its own. */
    String say(Enum<?> constant) {
        return say("outcome.word." + constant.getDeclaringClass().getSimpleName() + "." + constant.name());
    }

    <E extends Enum<E>> List<Option> choices(Class<E> kind) {
        return Arrays.stream(kind.getEnumConstants())
                .map(constant -> Option.of(constant.name(), say(constant)))
                .toList();
    }

    static List<Option> programmes(List<Programme> programmes) {
        return programmes.stream().map(one -> Option.of(one.id(), one.name())).toList();
    }

    String procedure(String code) {
        return rubrics.current(code).rubric().title();
    }

    static String day(LocalDate day) {
        return DAY.format(day);
    }

    static String at(Instant instant, ZoneId zone) {
        return MOMENT.format(instant.atZone(zone));
    }

    /** A number without a needless fraction. */
    static String number(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }

    String pressure(Pressure pressure) {
        return say("outcome.pressure", number(pressure.iop()), pressure.drops());
    }

    /** A count with its share and exact interval. */
    String rate(Tally tally) {
        Interval interval = tally.interval();
        return tally.of() == 0
                ? say("outcome.rate.none")
                : say(
                        "outcome.rate",
                        tally.has(),
                        tally.of(),
                        percent((double) tally.has() / tally.of()),
                        percent(interval.low()),
                        percent(interval.high()));
    }

    /** Whole percent of a share. */
    static long percent(double share) {
        return Math.round(share * PERCENT);
    }

    /** What a success is, in full; stands wherever a rate does. */
    String definition(SuccessSet set, int lowest) {
        return say("outcome.definition", set.upper(), lowest, set.fall());
    }

    /** An entry in one line. */
    String line(Content content) {
        if (content instanceof Baseline baseline) {
            Integer lines = baseline.acuityLines();
            String pressure = say("outcome.line.baseline", day(baseline.day()), pressure(baseline.pressure()));
            return lines == null ? pressure : say("outcome.line.acuity", pressure, lines);
        }
        if (content instanceof Visit visit) {
            return say("outcome.line.visit", day(visit.day()), pressure(visit.pressure()), findings(visit));
        }
        if (content instanceof NoVisit none) {
            String why = none.why() == null ? "" : say("outcome.line.why", say(none.why()));
            return say("outcome.line.no-visit", say(none.window()), say(none.absence()), day(none.since()), why);
        }
        return say("outcome.line.mistake");
    }

    /** All that was found and done at a visit; what nobody wrote down is left out. */
    String findings(Visit visit) {
        List<String> said = new ArrayList<>();
        Stream.of(
                        Optional.ofNullable(visit.chamber()),
                        Optional.ofNullable(visit.leakTest()),
                        Optional.ofNullable(visit.bleb()),
                        Optional.ofNullable(visit.vision()))
                .flatMap(Optional::stream)
                .forEach(found -> said.add(say(found)));
        if (visit.effusion() != null) {
            said.add(say("outcome.effusion." + visit.effusion()));
        }
        if (!visit.care().isEmpty()) {
            said.add(say(
                    "outcome.care", visit.careInOrder().stream().map(this::say).collect(Collectors.joining(", "))));
        }
        if (visit.moreSurgery()) {
            said.add(say("outcome.more-surgery"));
        }
        if (visit.lightLost()) {
            said.add(say("outcome.light-lost"));
        }
        said.add(say(visit.seenBy()));
        return String.join(" · ", said);
    }
}
