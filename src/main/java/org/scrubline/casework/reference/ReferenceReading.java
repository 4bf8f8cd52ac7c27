package org.scrubline.casework.reference;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Programme;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** Finds reference cases and settles who reads what of them. */
@Component
class ReferenceReading {

    private final ReferenceStore store;
    private final ReferenceRule rule;
    private final People people;
    private final Rubrics rubrics;

    ReferenceReading(ReferenceStore store, ReferenceRule rule, People people, Rubrics rubrics) {
        this.store = store;
        this.rule = rule;
        this.people = people;
        this.rubrics = rubrics;
    }

    ReferenceList list(SignedIn who, @Nullable UUID programme) {
        List<Programme> readable = programmes(who, Role.SUPERVISOR, Role.DIRECTOR);
        Programme of = chosen(readable, programme);
        Map<UUID, List<ReferenceScoring>> scorings = scorings(of);
        return new ReferenceList(
                of,
                readable,
                store.of(of.id()).stream()
                        .map(one -> file(who, of, one, scorings.getOrDefault(one.id(), List.of())))
                        .toList(),
                who.has(Role.DIRECTOR, of.id()),
                inForce());
    }

    ReferenceFile open(SignedIn who, UUID id) {
        ReferenceCase reference = store.find(id).orElseThrow(NotFound::new);
        Programme programme = programme(who, reference.programmeId(), Role.SUPERVISOR, Role.DIRECTOR);
        return file(who, programme, reference, scorings(programme).getOrDefault(id, List.of()));
    }

    private ReferenceFile file(
            SignedIn who, Programme programme, ReferenceCase reference, List<ReferenceScoring> scorings) {
        boolean closed = reference.closed(rule.today(programme));
        ReferenceScoring own = scorings.stream()
                .filter(one -> one.scorerId().equals(who.personId()))
                .findFirst()
                .orElse(null);
        return new ReferenceFile(
                reference,
                rubric(reference),
                programme.zone(),
                closed,
                own,
                scorings.size(),
                asked(programme, scorings),
                !closed && own == null && who.has(Role.SUPERVISOR, programme.id()),
                who.has(Role.DIRECTOR, programme.id()));
    }

    private int asked(Programme programme, List<ReferenceScoring> scorings) {
        Stream<UUID> now =
                people.holding(programme.id(), Role.SUPERVISOR).stream().map(Person::id);
        Stream<UUID> scored = scorings.stream().map(ReferenceScoring::scorerId);
        return (int) Stream.concat(now, scored).distinct().count();
    }

    /** Oldest first. */
    List<ScoredReference> closed(Programme programme) {
        Map<UUID, List<ReferenceScoring>> scorings = scorings(programme);
        return store.of(programme.id()).stream()
                .filter(one -> one.closed(rule.today(programme)))
                .sorted(Comparator.comparing(ReferenceCase::closesOn).thenComparing(ReferenceCase::reference))
                .map(one -> new ScoredReference(one, rubric(one), scorings.getOrDefault(one.id(), List.of())))
                .toList();
    }

    private Map<UUID, List<ReferenceScoring>> scorings(Programme programme) {
        return store.scorings(programme.id()).stream()
                .collect(Collectors.groupingBy(ReferenceScoring::referenceCaseId));
    }

    Rubric rubric(ReferenceCase reference) {
        return rubrics.byId(reference.rubricId()).orElseThrow().rubric();
    }

    /** The rubric in force of each procedure that takes new cases. */
    List<Rubric> inForce() {
        Set<String> taking = rubrics.takingCases();
        return rubrics.inForce().stream()
                .map(PublishedRubric::rubric)
                .filter(rubric -> taking.contains(rubric.procedure()))
                .toList();
    }

    /** The programme, in which this person has one of the roles; {@code NotFound} otherwise. */
    Programme programme(SignedIn who, UUID programme, Role... roles) {
        return chosen(programmes(who, roles), programme);
    }

    private List<Programme> programmes(SignedIn who, Role... roles) {
        return people.programmes().stream()
                .filter(programme -> Stream.of(roles).anyMatch(role -> who.has(role, programme.id())))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
    }

    private static Programme chosen(List<Programme> readable, @Nullable UUID programme) {
        return readable.stream()
                .filter(one -> programme == null || one.id().equals(programme))
                .findFirst()
                .orElseThrow(NotFound::new);
    }
}
