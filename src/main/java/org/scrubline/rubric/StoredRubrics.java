package org.scrubline.rubric;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.StaleData;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps parsed content in memory by its hash: the same hash is the same content, whoever published it. */
@Service
@Transactional
class StoredRubrics implements Rubrics {

    private static final Comparator<PublishedRubric> AS_LISTED = Comparator.comparing(
                    (PublishedRubric published) -> place(published.rubric().procedure()))
            .thenComparing(published -> published.rubric().procedure());

    private final RubricStore store;
    private final RubricLibrary library;
    private final Ledger ledger;
    private final ApplicationEventPublisher events;
    private final Clock clock;
    private final Map<String, Rubric> parsed = new ConcurrentHashMap<>();

    StoredRubrics(
            RubricStore store, RubricLibrary library, Ledger ledger, ApplicationEventPublisher events, Clock clock) {
        this.store = store;
        this.library = library;
        this.ledger = ledger;
        this.events = events;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public List<PublishedRubric> published() {
        return store.all().stream().map(this::read).sorted(AS_LISTED).toList();
    }

    @Override
    @Transactional(readOnly = true)
    public PublishedRubric current(String procedure) {
        return store.current(procedure, clock.instant()).map(this::read).orElseThrow(NotFound::new);
    }

    @Override
    @Transactional(readOnly = true)
    public List<PublishedRubric> inForce() {
        return store.inForce(clock.instant()).stream()
                .map(this::read)
                .sorted(AS_LISTED)
                .toList();
    }

    @Override
    @Transactional(readOnly = true)
    public Optional<PublishedRubric> byId(UUID id) {
        return store.find(id).map(this::read);
    }

    @Override
    @Transactional(readOnly = true)
    public Set<String> takingCases() {
        return store.takingCases(clock.instant());
    }

    private PublishedRubric read(RubricStore.Version version) {
        Rubric rubric = parsed.get(version.contentHash());
        if (rubric == null) {
            rubric = store.content(version.id()).rubric();
            parsed.put(version.contentHash(), rubric);
        }
        return new PublishedRubric(
                version.id(),
                rubric,
                version.contentHash(),
                version.publishedAt(),
                version.effectiveFrom(),
                version.zone());
    }

    @Override
    public Attempt<PublishedRubric> publish(Rubric rubric, UUID publisher) {
        return publishAll(List.of(rubric), publisher)
                .fold(published -> Attempt.done(published.get(0)), Attempt::refused);
    }

    @Override
    public Attempt<List<PublishedRubric>> publishLibrary(UUID publisher) {
        return publishAll(library.rubrics(), publisher);
    }

    private Attempt<List<PublishedRubric>> publishAll(List<Rubric> rubrics, UUID publisher) {
        List<Refusal> refusals =
                rubrics.stream().flatMap(rubric -> refusal(rubric).stream()).toList();
        if (!refusals.isEmpty()) {
            return Attempt.refused(refusals);
        }
        List<PublishedRubric> published = new ArrayList<>();
        for (Rubric rubric : rubrics) {
            published.add(store(rubric, publisher));
        }
        return Attempt.done(published);
    }

    private Optional<Refusal> refusal(Rubric rubric) {
        String hash = RubricContent.of(rubric).hash();
        return store.find(rubric.procedure(), rubric.version())
                .filter(existing -> !existing.contentHash().equals(hash))
                .map(existing -> Refusal.of("rubric.refusal.version-taken", rubric.title(), rubric.version()));
    }

    /** Adds the version unless its content is there already. Losing a race against other content is stale data. */
    private PublishedRubric store(Rubric rubric, UUID publisher) {
        RubricContent content = RubricContent.of(rubric);
        Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
        PublishedRubric fresh =
                new PublishedRubric(UUID.randomUUID(), rubric, content.hash(), now, now, ZoneOffset.UTC);
        if (store.insert(fresh, content.json(), publisher)) {
            events.publishEvent(RubricPublished.of(fresh, publisher));
            ledger.append(LeafKind.RUBRIC, fresh.id());
            return fresh;
        }
        return store.find(rubric.procedure(), rubric.version())
                .filter(existing -> existing.contentHash().equals(content.hash()))
                .map(this::read)
                .orElseThrow(() -> new StaleData("/rubrics", List.of()));
    }

    private static int place(String procedure) {
        int place = Procedures.ALL.indexOf(procedure);
        return place < 0 ? Procedures.ALL.size() : place;
    }
}
