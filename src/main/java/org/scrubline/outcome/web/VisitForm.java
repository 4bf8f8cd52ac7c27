package org.scrubline.outcome.web;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.scrubline.outcome.Entering;
import org.scrubline.outcome.FollowUp;
import org.scrubline.outcome.OutcomeEntry;
import org.scrubline.outcome.OutcomeEntry.Absence;
import org.scrubline.outcome.OutcomeEntry.Baseline;
import org.scrubline.outcome.OutcomeEntry.LostReason;
import org.scrubline.outcome.OutcomeEntry.Mistake;
import org.scrubline.outcome.OutcomeEntry.NoVisit;
import org.scrubline.outcome.OutcomeEntry.Source;
import org.scrubline.outcome.Pressure;
import org.scrubline.outcome.Visit;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;

/** The forms about an outcome as typed. Fields of a visit have plain names, those of the other two forms a beginning. */
record VisitForm(MultiValueMap<String, String> values) {

    static final String BASELINE = "baseline";
    static final String NO_VISIT = "none";

    static final String MORE_SURGERY = "moreSurgery";
    static final String LIGHT_LOST = "lightLost";

    private static final String YES = "YES";

    /** A visit, or every reason why not. */
    Attempt<Entering> visit() {
        Reader read = new Reader("");
        Optional<LocalDate> day = read.day("day");
        Optional<Pressure> pressure = read.pressure();
        Optional<Visit.SeenBy> seenBy = read.needed("seenBy", Visit.SeenBy.class);
        Optional<Source> source = read.needed("source", Source.class);
        return read.done(() -> new Entering(
                new Visit(
                        day.orElseThrow(),
                        pressure.orElseThrow(),
                        one("chamber", Visit.Chamber.class).orElse(null),
                        one("leakTest", Visit.LeakTest.class).orElse(null),
                        one("bleb", Visit.Bleb.class).orElse(null),
                        effusion(),
                        one("vision", Visit.Vision.class).orElse(null),
                        care(),
                        after().contains(MORE_SURGERY),
                        after().contains(LIGHT_LOST),
                        seenBy.orElseThrow()),
                source.orElseThrow(),
                replaces()));
    }

    Attempt<Entering> baseline() {
        Reader read = new Reader(BASELINE);
        Optional<LocalDate> day = read.day("Day");
        Optional<Pressure> pressure = read.pressure();
        Optional<Integer> lines = read.whole("Lines", Baseline.MOST_LINES, "outcome.refusal.lines");
        Optional<Source> source = read.needed("Source", Source.class);
        return read.done(() -> Entering.of(
                new Baseline(day.orElseThrow(), pressure.orElseThrow(), lines.orElse(null)), source.orElseThrow()));
    }

    Attempt<Entering> noVisit() {
        Reader read = new Reader(NO_VISIT);
        Optional<FollowUp> window = read.needed("Window", FollowUp.class);
        Optional<Absence> absence = read.needed("Absence", Absence.class);
        Optional<LocalDate> since = read.day("Since");
        boolean lost = absence.filter(Absence.LOST::equals).isPresent();
        Optional<LostReason> why = lost ? read.needed("Why", LostReason.class) : Optional.empty();
        Optional<Source> source = read.needed("Source", Source.class);
        return read.done(() -> Entering.of(
                new NoVisit(window.orElseThrow(), absence.orElseThrow(), since.orElseThrow(), why.orElse(null)),
                source.orElseThrow()));
    }

    /** Nothing stands in the place of the entry named. */
    Entering mistake() {
        return new Entering(new Mistake(), Source.SEEN_MYSELF, replaces());
    }

    /** The entry the form puts right; null for a new one. What is no number names an entry there is not. */
    @Nullable
    Integer replaces() {
        String typed = text("replaces");
        if (typed.isEmpty()) {
            return null;
        }
        return typed.matches("\\d{1,6}") ? Integer.valueOf(typed) : Integer.valueOf(0);
    }

    private @Nullable Boolean effusion() {
        String typed = text("effusion");
        return typed.equals(YES) ? Boolean.TRUE : typed.equals("NO") ? Boolean.FALSE : null;
    }

    /** What was ticked of what ends the follow-up of the operation. */
    List<String> after() {
        return values.getOrDefault("after", List.of());
    }

    List<String> ticked() {
        return values.getOrDefault("care", List.of());
    }

    private Set<Visit.Care> care() {
        List<String> ticked = ticked();
        return Arrays.stream(Visit.Care.values())
                .filter(care -> ticked.contains(care.name()))
                .collect(Collectors.toSet());
    }

    String text(String field) {
        return Optional.ofNullable(values.getFirst(field)).orElse("").strip();
    }

    private <E extends Enum<E>> Optional<E> one(String field, Class<E> kind) {
        return Arrays.stream(kind.getEnumConstants())
                .filter(constant -> constant.name().equals(text(field)))
                .findFirst();
    }

    /** A form that shows what an entry says, to put it right. */
    static VisitForm of(OutcomeEntry entry) {
        MultiValueMap<String, String> values = new LinkedMultiValueMap<>();
        values.set("replaces", Integer.toString(entry.ordinal()));
        values.set("source", entry.source().name());
        if (entry.content() instanceof Visit visit) {
            values.set("day", visit.day().toString());
            values.set("iop", OutcomeWords.number(visit.pressure().iop()));
            values.set("drops", Integer.toString(visit.pressure().drops()));
            set(values, "chamber", visit.chamber());
            set(values, "leakTest", visit.leakTest());
            set(values, "bleb", visit.bleb());
            set(values, "vision", visit.vision());
            set(values, "seenBy", visit.seenBy());
            if (visit.effusion() != null) {
                values.set("effusion", visit.effusion() ? YES : "NO");
            }
            visit.careInOrder().forEach(care -> values.add("care", care.name()));
            if (visit.moreSurgery()) {
                values.add("after", MORE_SURGERY);
            }
            if (visit.lightLost()) {
                values.add("after", LIGHT_LOST);
            }
        }
        return new VisitForm(values);
    }

    private static void set(MultiValueMap<String, String> values, String field, @Nullable Enum<?> constant) {
        if (constant != null) {
            values.set(field, constant.name());
        }
    }

    static VisitForm empty() {
        return new VisitForm(new LinkedMultiValueMap<>());
    }

    /** Every field with its first value, for showing it again. */
    Map<String, String> shown() {
        Map<String, String> shown = new HashMap<>();
        values.keySet().forEach(field -> shown.put(field, text(field)));
        return shown;
    }

    private interface Making {
        Entering make();
    }

    /** Reads the fields of one form and remembers what is wrong with them. */
    private final class Reader {

        private final String beginning;
        private final List<Refusal> wrong = new ArrayList<>();

        Reader(String beginning) {
            this.beginning = beginning;
        }

        Attempt<Entering> done(Making making) {
            return wrong.isEmpty() ? Attempt.done(making.make()) : Attempt.refused(wrong);
        }

        Optional<LocalDate> day(String name) {
            try {
                return Optional.of(LocalDate.parse(text(beginning + name)));
            } catch (DateTimeParseException e) {
                return refused(beginning + name, "outcome.refusal.day");
            }
        }

        <E extends Enum<E>> Optional<E> needed(String name, Class<E> kind) {
            Optional<E> chosen = one(beginning + name, kind);
            return chosen.isPresent() ? chosen : refused(beginning + name, "outcome.refusal.choose");
        }

        Optional<Pressure> pressure() {
            boolean plain = beginning.isEmpty();
            String field = plain ? "iop" : beginning + "Iop";
            String typed = text(field).replace(',', '.');
            boolean number = typed.matches("\\d{1,2}(\\.\\d)?") && Pressure.takes(Double.parseDouble(typed));
            if (!number) {
                refused(field, "outcome.refusal.iop", Pressure.HIGHEST);
            }
            Optional<Integer> drops = whole(plain ? "drops" : "Drops", Pressure.MOST_DROPS, "outcome.refusal.drops");
            if (text(plain ? "drops" : beginning + "Drops").isEmpty()) {
                refused(plain ? "drops" : beginning + "Drops", "outcome.refusal.drops", Pressure.MOST_DROPS);
            }
            return number && drops.isPresent()
                    ? Optional.of(new Pressure(Double.parseDouble(typed), drops.get()))
                    : Optional.empty();
        }

        /** Empty when nothing was typed. */
        Optional<Integer> whole(String name, int most, String key) {
            String typed = text(beginning + name);
            if (typed.isEmpty()) {
                return Optional.empty();
            }
            boolean fits = typed.matches("\\d{1,2}") && Integer.parseInt(typed) <= most;
            return fits ? Optional.of(Integer.valueOf(typed)) : refused(beginning + name, key, most);
        }

        private <T> Optional<T> refused(String field, String key, Object... arguments) {
            wrong.add(Refusal.at(field, key, arguments));
            return Optional.empty();
        }
    }
}
