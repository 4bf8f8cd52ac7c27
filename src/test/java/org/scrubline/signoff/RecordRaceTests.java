package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.signoff.RecordFixture.said;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Two tabs, two people, many threads: each thing happens once. Below the password, where nothing slows them down. */
@ScrublineTest
class RecordRaceTests {

    private static final int AT_ONCE = 16;
    private static final String WHY = "This case was another trainee’s case.";

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    VersionDesk versions;

    @Autowired
    VoidDesk voids;

    @Autowired
    ContestDesk contests;

    @Autowired
    ContestDecisions decisions;

    @Autowired
    Signing signing;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;
    SignedIn scorer;
    SignedIn director;
    SignedSheet signed;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        scorer = theatre.supervisor();
        director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(3)));
    }

    @Test
    void aVersionOpenedInManyTabsIsOneAndSignedInManyTabsIsOne() throws Exception {
        List<UUID> opened = many(
                () -> versions.open(scorer, signed.id(), RecordFixture.REASON).orThrow());
        assertThat(opened).containsOnly(signed.sheetId());
        assertThat(count("version_draft", "sheet_id", signed.sheetId())).isEqualTo(1);
        acts.change(theatre, scorer, signed.sheetId(), new SheetChange.SetStep("TF09", new StepState.Scored(2)));

        List<UUID> records = many(() -> signing.signWithoutCredential(scorer, signed.sheetId())
                .orThrow()
                .id());
        assertThat(records.stream().distinct()).hasSize(1);
        assertThat(count("signed_sheet", "sheet_id", signed.sheetId())).isEqualTo(2);
        assertThat(count("version_draft", "sheet_id", signed.sheetId())).isZero();
        assertThat(count("ledger_leaf", "record_id", records.get(0))).isEqualTo(1);
    }

    @Test
    void aVoidConfirmedWhileANewVersionIsSignedHasOneOutcomeNeverBoth() throws Exception {
        acts.open(theatre, scorer, signed.id()).orThrow();
        acts.askVoid(theatre, director, signed.id()).orThrow();
        SignedIn second = theatre.organisation().join("Tobias Renn", Role.DIRECTOR);

        List<String> outcomes = race(List.<Callable<String>>of(
                () -> outcome(() -> signing.signWithoutCredential(scorer, signed.sheetId())),
                () -> outcome(() -> voids.decide(second, signed.id(), true, said("")))));
        assertThat(outcomes.get(1)).isEqualTo("done");
        assertThat(outcomes.get(0)).as("refused, or not there any more").isIn("refused", "nothing");
        assertThat(count("signed_sheet", "sheet_id", signed.sheetId())).isEqualTo(1);
        assertThat(count("version_draft", "sheet_id", signed.sheetId())).isZero();
    }

    @Test
    void aVoidAskedForWhileANewVersionIsSignedIsEitherBeforeOrAfterIt() throws Exception {
        acts.open(theatre, scorer, signed.id()).orThrow();

        List<String> outcomes = race(List.<Callable<String>>of(
                () -> outcome(() -> signing.signWithoutCredential(scorer, signed.sheetId())),
                () -> outcome(() -> voids.ask(director, signed.id(), VoidGround.WRONG_TRAINEE, said(WHY)))));
        assertThat(outcomes.get(1)).isEqualTo("done");
        int versionAskedAbout = acts.history(theatre, director, signed.id())
                .voidWaiting()
                .orElseThrow()
                .request()
                .content()
                .record()
                .version();
        assertThat(versionAskedAbout).isEqualTo(outcomes.get(0).equals("done") ? 2 : 1);
        assertThat(count("signed_sheet", "sheet_id", signed.sheetId())).isEqualTo(versionAskedAbout);
    }

    @Test
    void twoDirectorsDecidingOneVoidDecideOnce() throws Exception {
        acts.askVoid(theatre, scorer, signed.id()).orThrow();
        SignedIn second = theatre.organisation().join("Tobias Renn", Role.DIRECTOR);

        List<String> outcomes = race(List.<Callable<String>>of(
                () -> outcome(() -> voids.decide(director, signed.id(), true, said(""))),
                () -> outcome(() -> voids.decide(second, signed.id(), false, said(WHY)))));
        assertThat(outcomes).containsExactlyInAnyOrder("done", "refused");
        assertThat(count("void_decision", "sheet_id", signed.sheetId())).isEqualTo(1);
    }

    @Test
    void aContestOpenedRepliedToAndDecidedInManyTabsHappensOnce() throws Exception {
        SignedIn reviewer = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        List<UUID> opened = many(() -> contests.open(theatre.trainee(), signed.id(), List.of(), said(WHY))
                .orThrow()
                .id());
        UUID contest = opened.get(0);
        assertThat(opened).containsOnly(contest);
        assertThat(many(() -> contests.reply(scorer, contest, said(WHY))
                                .orThrow()
                                .id())
                        .stream()
                        .distinct())
                .hasSize(1);
        assertThat(
                        many(() -> contests.nameReviewer(director, contest, reviewer.personId(), said(""))
                                        .orThrow()
                                        .id())
                                .stream()
                                .distinct())
                .hasSize(1);

        List<String> outcomes = race(List.<Callable<String>>of(
                () -> outcome(() -> decisions.decide(reviewer, contest, true, said(WHY))),
                () -> outcome(() -> decisions.decide(reviewer, contest, false, said(WHY))),
                () -> outcome(() -> decisions.withdraw(theatre.trainee(), contest, said("")))));
        assertThat(outcomes).containsExactlyInAnyOrder("done", "refused", "refused");
        assertThat(count("contest_step", "contest_id", contest)).isEqualTo(3);
    }

    /** A change of the case waits for a signature that is being made, and what is signed is what stood there. */
    @Test
    void aSignatureHoldsTheFactsOfItsCase() throws Exception {
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofHours(3)));
        UUID caseId = fixture.read(theatre, sheet).caseId();
        CountDownLatch signedNow = new CountDownLatch(1);
        // Set inside the transaction: the change may go on after the commit and before the future knows it is done.
        AtomicBoolean nothingLeftButTheCommit = new AtomicBoolean();
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try {
            Future<SignedSheet> signature = threads.submit(() -> in(() -> transaction.execute(status -> {
                SignedSheet record =
                        signing.signWithoutCredential(scorer, sheet).orThrow();
                signedNow.countDown();
                pause();
                nothingLeftButTheCommit.set(true);
                return record;
            })));
            signedNow.await();
            Future<Boolean> changed = threads.submit(() -> in(() -> transaction.execute(status -> {
                jdbc.sql("update surgical_case set band = 'D' where id = :id")
                        .param("id", caseId)
                        .update();
                return nothingLeftButTheCommit.get();
            })));
            assertThat(changed.get()).as("the change waited").isTrue();
            assertThat(signature.get().band().name()).isEqualTo("B");
        } finally {
            threads.shutdownNow();
        }
    }

    private static void pause() {
        try {
            Thread.sleep(300);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private <T> T in(Supplier<T> work) {
        return theatre.organisation().in(work);
    }

    private static String outcome(Callable<Attempt<?>> work) {
        try {
            return work.call().fold(done -> "done", reasons -> "refused");
        } catch (NotFound e) {
            return "nothing";
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private <T> List<T> many(Callable<T> work) throws Exception {
        return race(IntStream.range(0, AT_ONCE).mapToObj(i -> work).toList());
    }

    private <T> List<T> race(List<Callable<T>> works) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(works.size());
        try {
            CountDownLatch start = new CountDownLatch(1);
            List<Future<T>> running = new ArrayList<>();
            for (Callable<T> work : works) {
                running.add(threads.submit(() -> {
                    start.await();
                    return in(() -> call(work));
                }));
            }
            start.countDown();
            List<T> answers = new ArrayList<>();
            for (Future<T> one : running) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }

    private static <T> T call(Callable<T> work) {
        try {
            return work.call();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
    }

    private int count(String table, String column, UUID id) {
        return in(() ->
                transaction.execute(status -> jdbc.sql("select count(*) from " + table + " where " + column + " = :id")
                        .param("id", id)
                        .query(Integer.class)
                        .single()));
    }
}
