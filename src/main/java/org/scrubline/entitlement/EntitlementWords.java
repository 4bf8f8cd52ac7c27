package org.scrubline.entitlement;

import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.scrubline.people.People;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.Wording;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.springframework.context.i18n.LocaleContextHolder;
import org.springframework.stereotype.Component;

/** Says what a trainee may do, for every page that shows it. */
@Component
public class EntitlementWords {

    private final Entitlements entitlements;
    private final People people;
    private final Wording wording;
    private final Clock clock;

    EntitlementWords(Entitlements entitlements, People people, Wording wording, Clock clock) {
        this.entitlements = entitlements;
        this.people = people;
        this.wording = wording;
        this.clock = clock;
    }

    /** Everything that holds for a trainee in these programmes; the empty state when nothing does. */
    public MayDo of(Set<UUID> programmes, UUID trainee) {
        List<MayDo.Line> lines = programmes.stream()
                .sorted()
                .flatMap(programme -> entitlements.of(programme, trainee).stream())
                .map(this::line)
                .toList();
        return new MayDo(lines, wording.text("entitlement.none"));
    }

    /** The same for the programmes in which this person trains. */
    public MayDo of(SignedIn trainee) {
        return of(
                trainee.grants().stream().map(SignedIn.Grant::programmeId).collect(Collectors.toSet()),
                trainee.personId());
    }

    /** What holds for one case, in a sentence. */
    public String sentence(UUID programme, UUID trainee, Family family, Band band) {
        return entitlements
                .of(programme, trainee, family, band)
                .map(one -> one.suspended()
                        ? wording.text("entitlement.case.suspended", level(one.level()), day(one))
                        : wording.text("entitlement.case", level(one.level())))
                .orElseGet(() -> wording.text("entitlement.none"));
    }

    /** The same with the name of whom it is about. */
    public String about(String name, String sentence) {
        return wording.text("entitlement.about", name, sentence);
    }

    /** Code and few words, such as "E2, whole case, supervisor scrubbed". */
    public String level(EntitlementLevel level) {
        return wording.text("entitlement.level", level.name(), wording.text(level.messageKey()));
    }

    /** "band A" or "bands A, B". */
    public String bands(Set<Band> bands) {
        String letters = bands.stream().sorted().map(Band::name).collect(Collectors.joining(", "));
        return wording.text("entitlement.bands", bands.size(), letters);
    }

    public String family(Family family) {
        return wording.text("rubric.family." + family.name());
    }

    private MayDo.Line line(Entitlement one) {
        List<String> notes = new ArrayList<>();
        if (one.suspended()) {
            notes.add(wording.text("entitlement.suspended", day(one)));
        }
        boolean due = one.reviewDue(LocalDate.ofInstant(clock.instant(), zone(one.programmeId())));
        notes.add(wording.text(due ? "entitlement.review.overdue" : "entitlement.review", day(one.reviewOn())));
        return new MayDo.Line(
                wording.text("entitlement.line", family(one.family()), bands(one.bands()), level(one.level())),
                wording.text(one.level().meaningKey()),
                notes,
                one.suspended() || due);
    }

    private String day(Entitlement suspended) {
        return suspended.suspendedAt() == null
                ? ""
                : day(LocalDate.ofInstant(suspended.suspendedAt(), zone(suspended.programmeId())));
    }

    private ZoneId zone(UUID programme) {
        return people.programme(programme).zone();
    }

    private static String day(LocalDate day) {
        return DateTimeFormatter.ofPattern("d MMM uuuu", LocaleContextHolder.getLocale())
                .format(day);
    }
}
