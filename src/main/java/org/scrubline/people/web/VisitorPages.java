package org.scrubline.people.web;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.NamedRecords.NamedRecord;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.people.VisitorAccess;
import org.scrubline.platform.Role;
import org.scrubline.platform.Wording;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Makes the director's page of visitors and the visitor's own. */
@Component
class VisitorPages {

    private final People people;
    private final Wording wording;
    private final Clock clock;

    VisitorPages(People people, Wording wording, Clock clock) {
        this.people = people;
        this.wording = wording;
        this.clock = clock;
    }

    /**
     * The director's page.
     *
     * @param visitors who may be let in
     * @param given every access, newest first
     */
    record Page(String programme, List<ZoneOptions.Option> visitors, List<Choice> trainees, List<Line> given) {}

    /** A tick box. */
    record Choice(String value, String label, @Nullable String hint) {}

    /** One access; {@code end} is the address that ends it, null when it is over. */
    record Line(
            String visitor,
            String purpose,
            String what,
            String days,
            String state,
            String givenBy,
            @Nullable String end) {}

    /** What is open to a visitor for one purpose. */
    record Open(String purpose, String until, List<Item> items) {}

    /** A record to open. */
    record Item(
            String href,
            String label,
            @Nullable String note,
            @Nullable String figure) {}

    LocalDate today(Programme programme) {
        return LocalDate.ofInstant(clock.instant(), programme.zone());
    }

    Page page(Programme programme, List<VisitorAccess> given) {
        Instant now = clock.instant();
        return new Page(
                programme.name(),
                people.holding(programme.id(), Role.VISITOR).stream()
                        .map(person -> new ZoneOptions.Option(person.id().toString(), person.printedName()))
                        .toList(),
                people.holding(programme.id(), Role.TRAINEE).stream()
                        .map(person -> new Choice(person.id().toString(), person.printedName(), null))
                        .toList(),
                given.stream()
                        .map(access -> line(access, programme.zone(), now))
                        .toList());
    }

    private Line line(VisitorAccess access, ZoneId zone, Instant now) {
        boolean over = access.endedAt() != null || !now.isBefore(access.until());
        return new Line(
                access.visitor().printedName(),
                access.purpose(),
                what(access),
                wording.text("people.visitors.days", day(access.from(), zone), lastDay(access, zone)),
                state(access, zone, now),
                access.givenBy(),
                over ? null : "/visitors/" + access.id() + "/end");
    }

    private String what(VisitorAccess access) {
        Stream<String> trainees =
                access.trainees().stream().map(one -> wording.text("people.visitors.all-of", one.printedName()));
        Stream<String> records =
                access.records().stream().map(one -> wording.text("people.visitors.record", one.label()));
        return Stream.concat(trainees, records).collect(Collectors.joining(", "));
    }

    private String state(VisitorAccess access, ZoneId zone, Instant now) {
        Instant ended = access.endedAt();
        if (ended != null) {
            String by = access.endedBy() == null ? "" : access.endedBy();
            return wording.text("people.visitors.state.ended", minute(ended, zone), by);
        }
        if (access.open(now)) {
            return wording.text("people.visitors.state.open");
        }
        return wording.text(now.isBefore(access.from()) ? "people.visitors.state.later" : "people.visitors.state.over");
    }

    List<Open> open(List<VisitorAccess> accesses) {
        return accesses.stream().map(this::open).toList();
    }

    private Open open(VisitorAccess access) {
        ZoneId zone = people.programme(access.programmeId()).zone();
        List<Item> items = new ArrayList<>();
        for (Person trainee : access.trainees()) {
            String note = wording.text("people.visits.trainee.note");
            items.add(new Item("/progress/" + trainee.id(), trainee.printedName(), note, null));
        }
        for (NamedRecord one : access.records()) {
            items.add(new Item("/signed/" + one.id(), wording.text("people.visits.record", one.label()), null, null));
        }
        return new Open(access.purpose(), wording.text("people.visits.until", lastDay(access, zone)), items);
    }

    private static String lastDay(VisitorAccess access, ZoneId zone) {
        return day(access.until().minusSeconds(1), zone);
    }

    private static String day(Instant at, ZoneId zone) {
        return format("d MMM uuuu", at, zone);
    }

    private static String minute(Instant at, ZoneId zone) {
        return format("d MMM uuuu, HH:mm z", at, zone);
    }

    private static String format(String pattern, Instant at, ZoneId zone) {
        return DateTimeFormatter.ofPattern(pattern, LocaleContextHolder.getLocale())
                .format(at.atZone(zone));
    }
}
