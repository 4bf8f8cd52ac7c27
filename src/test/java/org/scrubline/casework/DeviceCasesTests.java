package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.CaseReceipt.Aside;
import org.scrubline.casework.TestProgramme.Entry;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A case kept on a device is entered once, whatever is sent how often. */
@ScrublineTest
class DeviceCasesTests {

    private static final UUID ID = UUID.fromString("00000000-0000-4000-8000-000000000042");

    @Autowired
    private DeviceCases intake;

    @Autowired
    private Cases cases;

    @Autowired
    private SelfScores selfScores;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private Clock clock;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private TestOrganisations organisations;

    private TestProgramme here;
    private Instant now;

    @BeforeEach
    void openTheProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    }

    @Test
    void aCaseFromADeviceIsEnteredWithTheTraineesOwnLevels() {
        CaseReceipt receipt = enter(ID, "K7-204", Map.of("TF01", 3)).orThrow();

        assertThat(receipt.aside()).isNull();
        assertThat(receipt.reference()).isEqualTo("K7-204");
        SurgicalCase entered = in(() -> cases.get(java.util.Objects.requireNonNull(receipt.caseId())));
        assertThat(entered.loggedBy()).isEqualTo(here.trainee().personId());
        assertThat(in(() -> selfScores.of(entered.id(), here.trainee().personId())))
                .isEqualTo(Map.of("TF01", 3));
        assertThat(receipts(here.trainee())).containsExactly(receipt);
    }

    @Test
    void theSameContentAgainGivesTheFirstReceiptAgain() {
        CaseReceipt first = enter(ID, "K7-204", Map.of()).orThrow();

        assertThat(enter(ID, "K7-204", Map.of()).orThrow()).isEqualTo(first);
        assertThat(logged()).hasSize(1);
        assertThat(in(() -> intake.asides(here.trainee()))).isEmpty();
    }

    @Test
    void theSameContentUnderAnotherIdIsAnotherCaseAndItsReferenceIsTaken() {
        enter(ID, "K7-204", Map.of()).orThrow();

        assertThat(reasons(enter(UUID.randomUUID(), "K7-204", Map.of())))
                .containsExactly("refusal.case.reference.taken");
        assertThat(enter(UUID.randomUUID(), "K7-205", Map.of()).orThrow().aside())
                .isNull();
        assertThat(logged()).hasSize(2);
    }

    @Test
    void anotherContentUnderTheSameIdIsKeptForItsTraineeToDecide() {
        enter(ID, "K7-204", Map.of()).orThrow();

        CaseReceipt second = enter(ID, "K7-205", Map.of()).orThrow();

        assertThat(second.aside()).isEqualTo(Aside.OTHER_CONTENT);
        assertThat(second.caseId()).isNull();
        assertThat(logged()).extracting(line -> line.surgicalCase().reference()).containsExactly("K7-204");
        assertThat(receipts(here.trainee())).hasSize(2);
        assertThat(in(() -> intake.asides(here.trainee()))).singleElement().satisfies(aside -> {
            assertThat(aside.enteredAs()).isEqualTo("K7-204");
            assertThat(aside.content()).contains("K7-205");
        });
        assertThat(enter(ID, "K7-205", Map.of()).orThrow())
                .as("sent again it is not kept twice")
                .isEqualTo(second);
    }

    @Test
    void anotherContentWithTheReferenceOfTheFirstIsKeptToo() {
        enter(ID, "K7-204", Map.of()).orThrow();

        assertThat(enter(ID, "K7-204", Map.of("TF01", 2)).orThrow().aside()).isEqualTo(Aside.OTHER_CONTENT);
    }

    @Test
    void anEndStillToComeByMoreThanTenMinutesIsKeptForItsTraineeToDecide() {
        CaseReceipt receipt = at(entry("K7-204").endedAt(now.plusSeconds(601))).orThrow();

        assertThat(receipt.aside()).isEqualTo(Aside.END_AHEAD);
        assertThat(logged()).isEmpty();
        assertThat(in(() -> intake.asides(here.trainee()))).hasSize(1);
    }

    @Test
    void anEndWithinTheToleranceOfClocksIsEntered() {
        assertThat(at(entry("K7-204").endedAt(now.plusSeconds(600))).orThrow().aside())
                .isNull();
        assertThat(logged()).hasSize(1);
    }

    @Test
    void whatCanBePutRightOnTheDeviceIsRefusedAndNothingIsStored() {
        assertThat(reasons(enter(ID, "Mr Tarn 123", Map.of()))).containsExactly("refusal.case.reference.form");
        assertThat(reasons(enter(ID, "K7-204", Map.of("TF01", 6)))).containsExactly("refusal.self-score.level");
        assertThat(reasons(enter(ID, "K7-204", Map.of("DS01", 3)))).containsExactly("refusal.self-score.level");
        assertThat(reasons(at(entry("nonsense").endedAt(now.plusSeconds(9_000)))))
                .containsExactly("refusal.case.reference.form", "refusal.case.end.future");
        assertThat(receipts(here.trainee())).isEmpty();
        assertThat(logged()).isEmpty();

        assertThat(enter(ID, "K7-204", Map.of("TF01", 5)).orThrow().caseId())
                .as("put right under the same id")
                .isNotNull();
    }

    @Test
    void aDeviceLogsNobodyElsesCase() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);

        assertThat(reasons(send(here.trainee(), ID, entry("K7-204").trainee(peer), Map.of())))
                .contains("refusal.case.programme");
        assertThat(reasons(send(here.supervisor(), ID, entry("K7-204"), Map.of())))
                .contains("refusal.case.programme");
    }

    @Test
    void whatThePersonSentIsToldToNobodyElse() {
        SignedIn peer = here.another("Hadi Nkolaris", Role.TRAINEE);
        enter(ID, "K7-204", Map.of()).orThrow();

        assertThat(receipts(peer)).isEmpty();
        CaseReceipt theirs =
                send(peer, ID, entry("K7-209").trainee(peer), Map.of()).orThrow();
        assertThat(theirs.aside())
                .as("an id of somebody else's is no key to it")
                .isEqualTo(Aside.OTHER_CONTENT);
        assertThat(in(() -> intake.asides(peer)))
                .singleElement()
                .satisfies(aside -> assertThat(aside.enteredAs()).isNull());
        UUID waiting = in(() -> intake.asides(peer)).get(0).id();
        assertThatThrownBy(() -> in(() -> intake.aside(here.trainee(), waiting)))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void theTraineeEntersACaseThatWaitedOnceAndItWaitsNoMore() {
        at(entry("K7-204").endedAt(now.plus(Duration.ofDays(1)))).orThrow();
        UUID waiting = in(() -> intake.asides(here.trainee())).get(0).id();

        assertThat(reasons(in(() -> intake.enterAside(
                        here.trainee(),
                        waiting,
                        entry("K7-204").endedAt(now.plus(Duration.ofDays(1))).done(),
                        Map.of()))))
                .containsExactly("refusal.case.end.future");
        SurgicalCase entered = in(() -> intake.enterAside(
                        here.trainee(), waiting, entry("K7-204").done(), Map.of("TF01", 4, "DS01", 2)))
                .orThrow();

        assertThat(in(() -> selfScores.of(entered.id(), here.trainee().personId())))
                .isEqualTo(Map.of("TF01", 4));
        assertThat(in(() -> intake.asides(here.trainee()))).isEmpty();
        assertThat(receipts(here.trainee()))
                .singleElement()
                .satisfies(receipt -> assertThat(receipt.caseId()).isEqualTo(entered.id()));
        assertThatThrownBy(() -> in(() -> intake.enterAside(
                        here.trainee(), waiting, entry("K7-206").done(), Map.of())))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void aCaseThatWaitedIsPutAwayWithoutBeingLogged() {
        at(entry("K7-204").endedAt(now.plus(Duration.ofDays(1)))).orThrow();
        UUID waiting = in(() -> intake.asides(here.trainee())).get(0).id();

        in(() -> {
            intake.putAway(here.trainee(), waiting);
            return true;
        });

        assertThat(in(() -> intake.asides(here.trainee()))).isEmpty();
        assertThat(receipts(here.trainee())).as("what was sent stays").hasSize(1);
        assertThat(logged()).isEmpty();
        List<String> written = in(() -> transaction.execute(status -> jdbc.sql("""
                        select record_label
                        from audit_entry
                        where action = 'case-put-away'
                          and actor_id = :trainee
                          and record_id = :waiting
                        """)
                .param("trainee", here.trainee().personId())
                .param("waiting", waiting)
                .query(String.class)
                .list()));
        assertThat(written).as("that it was put away is written down").containsExactly("K7-204");
    }

    @Test
    void whatTheClocksSaidIsStored() {
        enter(ID, "K7-204", Map.of()).orThrow();

        List<Map<String, Object>> rows = in(() -> transaction.execute(status -> jdbc.sql("""
                        select kept_zone, page_ms, waited_ms, kept_at = :kept as kept, received_at >= :kept as received
                        from case_submission
                        where tenant_id = :tenant
                          and submission_id = :id
                        """)
                .param("kept", now.atOffset(java.time.ZoneOffset.UTC))
                .param("tenant", here.organisation().tenant())
                .param("id", ID)
                .query()
                .listOfRows()));

        assertThat(rows)
                .singleElement()
                .isEqualTo(Map.of(
                        "kept_zone",
                        "Europe/London",
                        "page_ms",
                        4_000L,
                        "waited_ms",
                        1_500L,
                        "kept",
                        true,
                        "received",
                        true));
    }

    @Test
    void theSameCaseSentManyTimesAtOnceIsOneCaseWithOneReceipt() throws Exception {
        List<CaseReceipt> receipts = race(8, n -> enter(ID, "K7-204", Map.of("TF01", 3)));

        assertThat(new HashSet<>(receipts)).hasSize(1);
        assertThat(logged()).hasSize(1);
        assertThat(in(() -> intake.asides(here.trainee()))).isEmpty();
    }

    @Test
    void ofDifferentContentsSentAtOnceUnderOneIdOneIsEnteredAndTheRestWait() throws Exception {
        List<CaseReceipt> receipts = race(6, n -> enter(ID, "K7-20" + n, Map.of()));

        assertThat(receipts).filteredOn(receipt -> receipt.aside() == null).hasSize(1);
        assertThat(logged()).hasSize(1);
        assertThat(in(() -> intake.asides(here.trainee()))).hasSize(5);
    }

    private interface Sending {
        Attempt<CaseReceipt> send(int number);
    }

    private static List<CaseReceipt> race(int runners, Sending sending) throws Exception {
        CyclicBarrier start = new CyclicBarrier(runners);
        ExecutorService pool = Executors.newFixedThreadPool(runners);
        try {
            List<Callable<CaseReceipt>> all = new ArrayList<>();
            for (int n = 0; n < runners; n++) {
                int number = n;
                all.add(() -> {
                    start.await();
                    return sending.send(number).orThrow();
                });
            }
            List<CaseReceipt> receipts = new ArrayList<>();
            for (Future<CaseReceipt> done : pool.invokeAll(all)) {
                receipts.add(done.get());
            }
            return receipts;
        } finally {
            pool.shutdownNow();
        }
    }

    private Attempt<CaseReceipt> enter(UUID id, String reference, Map<String, Integer> levels) {
        return send(here.trainee(), id, entry(reference), levels);
    }

    private Attempt<CaseReceipt> at(Entry entry) {
        return ((org.scrubline.platform.ScrublineClock) clock).at(now, () -> send(here.trainee(), ID, entry, Map.of()));
    }

    /** The content stands for the entry and the levels, as a device would have sent them. */
    private Attempt<CaseReceipt> send(SignedIn who, UUID id, Entry entry, Map<String, Integer> levels) {
        CaseEntry done = entry.done();
        Map<String, List<String>> fields = DeviceCaseFixture.answers(
                here.organisation(), here.supervisor(), done.reference(), String.valueOf(done.endedAt()));
        levels.forEach((step, level) -> fields.put("level." + step, List.of(level.toString())));
        return in(() -> intake.enter(who, DeviceCaseFixture.submission(id, who, fields, now), done, levels));
    }

    private Entry entry(String reference) {
        return here.entry(reference, now.minus(Duration.ofHours(1)));
    }

    private List<CaseReceipt> receipts(SignedIn who) {
        return in(() -> intake.receipts(who, ID));
    }

    private List<TraineeCase> logged() {
        return in(() -> cases.ofTrainee(here.trainee().personId()));
    }

    private static List<String> reasons(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private <T> T in(Supplier<T> work) {
        return here.organisation().in(work);
    }
}
