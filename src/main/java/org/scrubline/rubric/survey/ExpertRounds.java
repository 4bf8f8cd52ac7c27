package org.scrubline.rubric.survey;

import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.Person;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.FreeText;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.scrubline.rubric.change.RubricDeed;
import org.scrubline.rubric.change.RubricPeople;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Rounds in which experts rate how relevant each step is, once and apart from each other: until a round is closed nobody
 * sees an answer, afterwards its director and experts see counts without names.
 */
@Service
@Transactional
public class ExpertRounds {

    /** Before the code of a step, the form field of its rating. */
    public static final String RELEVANCE = "relevance-";

    /** Before the code of a step, the form field of its remark. */
    public static final String REMARK = "remark-";

    /** Longest remark in characters. */
    static final int REMARK_LENGTH = 500;

    private final RoundStore store;
    private final People people;
    private final RubricPeople rubricPeople;
    private final Settings settings;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    ExpertRounds(
            RoundStore store,
            People people,
            RubricPeople rubricPeople,
            Settings settings,
            Ledger ledger,
            ApplicationEventPublisher events,
            Clock clock) {
        this.store = store;
        this.people = people;
        this.rubricPeople = rubricPeople;
        this.settings = settings;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    /** The rounds a person may see, newest first: all for a director, for others those they are asked in. */
    @Transactional(readOnly = true)
    public List<ExpertRound> of(SignedIn who) {
        RubricPeople.requireReader(who);
        return store.all().stream().filter(round -> sees(who, round)).toList();
    }

    /**
     * One round.
     *
     * @throws NotFound when there is none that the person may see
     */
    @Transactional(readOnly = true)
    public ExpertRound round(SignedIn who, UUID id) {
        return of(who).stream()
                .filter(round -> round.id().equals(id))
                .findFirst()
                .orElseThrow(NotFound::new);
    }

    private static boolean sees(SignedIn who, ExpertRound round) {
        return RubricPeople.directs(who) || round.experts().contains(who.personId());
    }

    /** Supervisors and committee members of the programmes this person directs, by name: those who can be asked. */
    @Transactional(readOnly = true)
    public List<Person> candidates(SignedIn director) {
        Map<UUID, Person> found = people.programmes().stream()
                .filter(programme -> director.has(Role.DIRECTOR, programme.id()))
                .flatMap(programme -> Stream.of(Role.SUPERVISOR, Role.COMMITTEE_MEMBER)
                        .flatMap(role -> people.holding(programme.id(), role).stream()))
                .collect(Collectors.toMap(Person::id, Function.identity(), (one, same) -> one));
        return found.values().stream()
                .sorted(Comparator.comparing(Person::printedName).thenComparing(Person::id))
                .toList();
    }

    /**
     * Asks experts about a rubric.
     *
     * @param rubric what to ask about; null when nothing was chosen, or a draft with faults
     * @param day last day for answers in the zone of the director's programme, from today to a year ahead
     * @return the round, or why not, at the fields {@code about}, {@code day} and {@code experts}
     */
    public Attempt<ExpertRound> open(SignedIn director, @Nullable Rubric rubric, String day, Set<UUID> experts) {
        RubricPeople.requireDirector(director);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        ZoneId zone = rubricPeople.zone(director);
        Optional<Instant> closes = closes(day, zone, now);
        List<Refusal> reasons = new ArrayList<>();
        if (rubric == null) {
            reasons.add(Refusal.at("about", "refusal.round.about"));
        }
        if (closes.isEmpty()) {
            reasons.add(Refusal.at("day", "refusal.rubric.day"));
        }
        Set<UUID> known = candidates(director).stream().map(Person::id).collect(Collectors.toSet());
        if (experts.size() < ContentValidity.LEAST_EXPERTS || !known.containsAll(experts)) {
            reasons.add(Refusal.at("experts", "refusal.round.experts", ContentValidity.LEAST_EXPERTS));
        }
        if (!reasons.isEmpty() || rubric == null) {
            return Attempt.refused(reasons);
        }
        ExpertRound round = new ExpertRound(
                UUID.randomUUID(),
                rubric,
                settings.of(rubricPeople.programme(director)).stepKept(),
                director.printedName(),
                now,
                closes.orElseThrow(),
                zone,
                experts,
                Set.of());
        store.insert(round, director);
        tell("rubric-round-opened", director, round);
        ledger.append(LeafKind.RUBRIC_ROUND, round.id());
        return Attempt.done(round);
    }

    private static Optional<Instant> closes(String typed, ZoneId zone, Instant now) {
        LocalDate today = LocalDate.ofInstant(now, zone);
        try {
            return Optional.of(LocalDate.parse(typed.strip()))
                    .filter(day -> !day.isBefore(today) && !day.isAfter(today.plusYears(1)))
                    .map(day -> day.plusDays(1).atStartOfDay(zone).toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /**
     * Keeps an expert's answer, every step rated. It cannot be given twice.
     *
     * @param typed by field, {@link #RELEVANCE} or {@link #REMARK} and the code of the step
     * @return the answer, or why not, at those fields or the whole form
     * @throws NotFound for who is not asked
     */
    public Attempt<List<StepRating>> answer(SignedIn who, UUID id, Map<String, String> typed) {
        ExpertRound round = round(who, id);
        if (!round.experts().contains(who.personId())) {
            throw new NotFound();
        }
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        if (round.closed(now)) {
            return Attempt.refused(Refusal.of("refusal.round.closed"));
        }
        List<StepRating> answer = new ArrayList<>();
        List<Refusal> reasons = new ArrayList<>();
        for (Step step : round.rubric().steps()) {
            answer.add(rating(step, typed, reasons));
        }
        if (!reasons.isEmpty()) {
            return Attempt.refused(reasons);
        }
        UUID rating = UUID.randomUUID();
        if (!store.insert(rating, id, who.personId(), now.atOffset(ZoneOffset.UTC), answer)) {
            return Attempt.refused(Refusal.of("refusal.round.answered"));
        }
        tell("rubric-steps-rated", who, round);
        ledger.append(LeafKind.RUBRIC_RATING, rating);
        return Attempt.done(answer);
    }

    private static StepRating rating(Step step, Map<String, String> typed, List<Refusal> reasons) {
        String relevance = typed.getOrDefault(RELEVANCE + step.code(), "").strip();
        if (!relevance.matches("[1-4]")) {
            reasons.add(Refusal.at(RELEVANCE + step.code(), "refusal.round.relevance", step.code()));
            relevance = "1";
        }
        String remark = FreeText.tidy(typed.get(REMARK + step.code()));
        FreeText.narrative(REMARK + step.code(), remark, REMARK_LENGTH).ifPresent(reasons::add);
        return new StepRating(step.code(), Integer.parseInt(relevance), remark);
    }

    /**
     * What came of a round; empty until it is closed.
     *
     * @throws NotFound when there is no such round that the person may see
     */
    @Transactional(readOnly = true)
    public Optional<RoundResult> result(SignedIn who, UUID id) {
        ExpertRound round = round(who, id);
        if (!round.closed(clock.instant())) {
            return Optional.empty();
        }
        List<List<StepRating>> answers = store.ratings(id);
        ContentValidity validity = ContentValidity.of(
                round.rubric().steps().stream().map(Step::code).toList(),
                answers.stream()
                        .map(answer ->
                                answer.stream().collect(Collectors.toMap(StepRating::step, StepRating::relevance)))
                        .toList());
        return Optional.of(new RoundResult(validity, validity.known() ? remarks(answers) : Map.of()));
    }

    private static Map<String, List<String>> remarks(List<List<StepRating>> answers) {
        return answers.stream()
                .flatMap(List::stream)
                .filter(rating -> !rating.remark().isEmpty())
                .sorted(Comparator.comparing(StepRating::remark))
                .collect(Collectors.groupingBy(
                        StepRating::step, Collectors.mapping(StepRating::remark, Collectors.toList())));
    }

    private void tell(String action, SignedIn who, ExpertRound round) {
        String label = round.rubric().title() + " " + round.rubric().version();
        events.publishEvent(new RubricDeed(action, who.personId(), RubricDeed.item(round.id(), label), null, null));
    }
}
