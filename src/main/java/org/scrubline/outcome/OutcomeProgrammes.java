package org.scrubline.outcome;

import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.people.People;
import org.scrubline.people.Programme;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.springframework.stereotype.Component;

/** The cases of a programme with what is known of each, for the lists of this room. */
@Component
class OutcomeProgrammes {

    private final People people;
    private final Rubrics rubrics;
    private final OutcomeCaseQueries queries;
    private final OutcomeStore store;

    OutcomeProgrammes(People people, Rubrics rubrics, OutcomeCaseQueries queries, OutcomeStore store) {
        this.people = people;
        this.rubrics = rubrics;
        this.queries = queries;
        this.store = store;
    }

    /** Programmes in which this person holds one of the roles, by name. */
    List<Programme> of(SignedIn who, Role... roles) {
        return people.programmes().stream()
                .filter(one -> Arrays.stream(roles).anyMatch(role -> who.has(role, one.id())))
                .sorted(Comparator.comparing(Programme::name).thenComparing(Programme::id))
                .toList();
    }

    /**
     * The one asked for.
     *
     * @param asked null for the first
     */
    static Programme chosen(List<Programme> programmes, @Nullable UUID asked) {
        return programmes.stream()
                .filter(one -> asked == null || one.id().equals(asked))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    /** Cases with their outcome, the oldest first, as entered until an instant. */
    Map<FiltrationCase, CaseOutcome> outcomes(List<FiltrationCase> cases, Instant at) {
        Map<UUID, List<OutcomeEntry>> entries =
                store.known(cases.stream().map(FiltrationCase::id).toList(), at);
        Map<FiltrationCase, CaseOutcome> outcomes = new LinkedHashMap<>();
        cases.forEach(one ->
                outcomes.put(one, CaseOutcome.of(one.operatedOn(), entries.getOrDefault(one.id(), List.of()))));
        return outcomes;
    }

    /**
     * Ended cases of a family.
     *
     * @param family null for all that are judged by their outcome
     * @param person only those this person trained or was asked to score in; null for all
     */
    List<FiltrationCase> cases(UUID programme, @Nullable Family family, @Nullable UUID person) {
        return queries.cases(programme, procedures(family), person);
    }

    private Collection<String> procedures(@Nullable Family family) {
        return rubrics.published().stream()
                .map(PublishedRubric::rubric)
                .filter(rubric -> rubric.family().judgedByOutcome())
                .filter(rubric -> family == null || rubric.family() == family)
                .map(Rubric::procedure)
                .distinct()
                .toList();
    }
}
