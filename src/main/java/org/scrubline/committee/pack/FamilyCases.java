package org.scrubline.committee.pack;

import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.scrubline.casework.StepState;
import org.scrubline.casework.Verdict;
import org.scrubline.progress.CountedCase;
import org.scrubline.progress.Evidence;
import org.scrubline.progress.StepScore;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.EventCatalogue;
import org.scrubline.signoff.SignedSheet;

/**
 * The cases of one family that count toward a gate, oldest first: sheets that await their countersignature are left out.
 * Of two sheets about one case the more careful counts.
 */
record FamilyCases(List<CountedCase> cases) {

    private static final Set<Verdict> SAFE = EnumSet.of(Verdict.SAFE_WITH_SUPERVISOR_SCRUBBED, Verdict.INDEPENDENT);

    FamilyCases {
        cases = List.copyOf(cases);
    }

    static FamilyCases of(Collection<SignedSheet> counted) {
        return new FamilyCases(Evidence.of(counted.stream()
                        .filter(sheet -> !sheet.marks().awaitingCountersignature())
                        .toList())
                .cases());
    }

    FamilyCases in(Band first, Band... others) {
        Set<Band> bands = EnumSet.of(first, others);
        return only(one -> bands.contains(band(one)));
    }

    FamilyCases last(int most) {
        return new FamilyCases(cases.subList(Math.max(0, cases.size() - most), cases.size()));
    }

    FamilyCases safe() {
        return only(one -> one.sheets().stream().allMatch(sheet -> SAFE.contains(sheet.verdict())));
    }

    FamilyCases independent() {
        return only(one -> one.sheets().stream().allMatch(sheet -> sheet.verdict() == Verdict.INDEPENDENT));
    }

    FamilyCases withoutCriticalEvent() {
        return only(one -> !one.criticalEvent());
    }

    /** What was done about an event stands in the signed text; the catalogue asks for it with every event. */
    FamilyCases withEventHandled() {
        return only(one -> one.sheets().stream()
                .flatMap(sheet -> sheet.events().stream())
                .anyMatch(event -> !event.eventCode().equals(EventCatalogue.TAKEOVER)));
    }

    FamilyCases withCriticalStepsHigh() {
        return only(one -> one.sheets().stream().allMatch(FamilyCases::high));
    }

    FamilyCases among(Set<UUID> chosen) {
        return only(one -> one.sheets().stream().anyMatch(sheet -> chosen.contains(sheet.caseId())));
    }

    int size() {
        return cases.size();
    }

    int scorers() {
        return (int) sheets().map(SignedSheet::signerId).distinct().count();
    }

    List<UUID> records() {
        return sheets().map(SignedSheet::id).toList();
    }

    private Stream<SignedSheet> sheets() {
        return cases.stream().flatMap(one -> one.sheets().stream());
    }

    private FamilyCases only(Predicate<CountedCase> which) {
        return new FamilyCases(cases.stream().filter(which).toList());
    }

    /** As the newest signature has it. */
    private static Band band(CountedCase one) {
        return one.sheets().get(one.sheets().size() - 1).band();
    }

    private static boolean high(SignedSheet sheet) {
        List<Integer> levels = sheet.steps().stream()
                .filter(SignedSheet.SignedStep::critical)
                .map(SignedSheet.SignedStep::state)
                .filter(StepState.Scored.class::isInstance)
                .map(state -> ((StepState.Scored) state).level())
                .toList();
        return !levels.isEmpty() && levels.stream().allMatch(level -> level >= StepScore.HIGH);
    }
}
