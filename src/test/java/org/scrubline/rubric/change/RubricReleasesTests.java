package org.scrubline.rubric.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.casework.Cases;
import org.scrubline.casework.OpenSheet;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.TestProgramme;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.PublishedRubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** From the draft to the first case with a new version, against a real PostgreSQL. */
@ScrublineTest
class RubricReleasesTests {

    private static final String NEEDLING = Procedures.NEEDLING;
    private static final Instant NOON = Instant.parse("2026-06-10T12:00:00Z");
    private static final Instant BEFORE = Instant.parse("2026-07-31T22:30:00Z");
    private static final Instant AFTER = Instant.parse("2026-07-31T23:30:00Z");

    @Autowired
    TestOrganisations organisations;

    @Autowired
    Rubrics rubrics;

    @Autowired
    RubricDrafts drafts;

    @Autowired
    RubricReviews reviews;

    @Autowired
    RubricReleases releases;

    @Autowired
    Cases cases;

    @Autowired
    Sheets sheets;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    TestProgramme programme;
    TestOrganisation organisation;
    SignedIn director;
    SignedIn supervisor;

    @BeforeEach
    void open() {
        programme = clock.at(NOON.minusSeconds(3600), () -> TestProgramme.open(organisations.open(), rubrics));
        organisation = programme.organisation();
        director = programme.director();
        supervisor = programme.supervisor();
    }

    @Test
    void aDraftBeginsWithTheTextInForceAndIsOneAProcedure() {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));
        RubricDraft again = at(NOON, () -> drafts.begin(another(), NEEDLING));

        assertThat(again).isEqualTo(begun);
        assertThat(at(NOON, () -> drafts.read(begun)).faults())
                .singleElement()
                .satisfies(fault -> assertThat(fault.message()).contains("1.0 is published already"));
    }

    @Test
    void aFaultyTextIsSavedAndNotReviewed() {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));
        RubricDraft saved = at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), "procedure: NEEDLING"))
                .orThrow();

        assertThat(at(NOON, () -> drafts.read(saved)).faults()).isNotEmpty();
        assertThat(refusals(at(NOON, () -> reviews.review(supervisor, NEEDLING, saved.hash(), "agree", "Fine."))))
                .contains("refusal.rubric.faulty");
    }

    @Test
    void whoSavesAfterSomebodyElseSeesBothTexts() {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));
        at(NOON, () -> drafts.save(another(), NEEDLING, begun.lockNo(), "theirs"));

        assertThatThrownBy(() -> at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), "mine")))
                .isInstanceOfSatisfying(StaleData.class, stale -> {
                    assertThat(stale.lines().get(0).yours()).isEqualTo("mine");
                    assertThat(stale.lines().get(0).stored()).isEqualTo("theirs");
                });
        assertThatThrownBy(() -> at(NOON, () -> {
                    drafts.drop(director, NEEDLING, begun.lockNo());
                    return true;
                }))
                .isInstanceOf(StaleData.class);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "  ", "a\0b", "a\ud800b"})
    void whatIsNoTextIsNotSaved(String text) {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));

        assertThat(refusals(at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), text))))
                .hasSize(1);
        assertThat(refusals(at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), "é".repeat(32 * 1024 + 1)))))
                .containsExactly("refusal.rubric.size");
        assertThat(at(NOON, () -> drafts.open(director, NEEDLING))).contains(begun);
        assertThat(at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), "é".repeat(32 * 1024)))
                        .orThrow()
                        .source())
                .hasSize(32 * 1024);
    }

    @Test
    void aDraftThatChangesProcedureFamilyOrSourceIsFaulty() {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));
        String text = begun.source()
                .replace("procedure: NEEDLING", "procedure: OTHER")
                .replace("family: needling", "family: gel-stent")
                .replace("version: \"1.0\"", "version: \"" + "9".repeat(21) + "\"")
                .replaceFirst("    coaching:", "    sources: [nowhere]\n    coaching:");
        RubricDraft saved = at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), text))
                .orThrow();

        assertThat(at(NOON, () -> drafts.read(saved)).faults())
                .extracting(fault -> fault.message().replaceAll("step [A-Z0-9]+", "step"))
                .containsExactlyInAnyOrder(
                        "draft, key procedure: must stay NEEDLING",
                        "draft, key family: must stay that of the version in force",
                        "draft, key version: is longer than 20 characters",
                        "draft, step, key sources: there is no source nowhere");
    }

    @Test
    void nobodyReviewsWhatTheyWroteAndALaterTextVoidsAReview() {
        RubricDraft draft = edited("1.1");
        assertThat(refusals(at(NOON, () -> reviews.review(director, NEEDLING, draft.hash(), "agree", "Fine."))))
                .containsExactly("refusal.rubric.author");
        RubricReview review = agree(supervisor, draft);
        assertThat(at(NOON, () -> reviews.agreement(draft))).contains(review);

        RubricDraft later = at(
                        NOON,
                        () -> drafts.save(director, NEEDLING, draft.lockNo(), draft.source() + "\n# one remark more"))
                .orThrow();

        assertThat(at(NOON, () -> reviews.agreement(later))).isEmpty();
        assertThat(refusals(publish(later, "2026-08-01"))).containsExactly("refusal.rubric.unreviewed");
        assertThatThrownBy(() -> agree(supervisor, draft)).isInstanceOf(StaleData.class);
        assertThatThrownBy(() -> publish(draft, "2026-08-01")).isInstanceOf(StaleData.class);
    }

    @Test
    void anObjectionStandsUntilItsWriterAgrees() {
        RubricDraft draft = edited("1.1");
        agree(supervisor, draft);
        SignedIn second = organisation.join("Lorenz Quellan", Role.COMMITTEE_MEMBER);
        at(NOON, () -> reviews.review(second, NEEDLING, draft.hash(), "object", "Step two is unclear."))
                .orThrow();
        assertThat(refusals(publish(draft, "2026-08-01"))).containsExactly("refusal.rubric.unreviewed");

        clock.at(NOON.plusSeconds(60), () -> agree(second, draft));
        assertThat(publish(draft, "2026-08-01").orThrow().rubric().version()).isEqualTo("1.1");
    }

    @ParameterizedTest
    @CsvSource({"maybe, Fine., refusal.rubric.answer", "agree, '', refusal.rubric.words"})
    void aReviewSaysWhetherAndWhy(String answer, String words, String refusal) {
        RubricDraft draft = edited("1.1");

        assertThat(refusals(at(NOON, () -> reviews.review(supervisor, NEEDLING, draft.hash(), answer, words))))
                .containsExactly(refusal);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2026-06-09", "2027-06-11", "", "tomorrow", "2026-02-30", "+999999999-12-31"})
    void theFirstDayIsFromTodayToAYearAhead(String day) {
        RubricDraft draft = edited("1.1");
        agree(supervisor, draft);

        assertThat(refusals(publish(draft, day))).containsExactly("refusal.rubric.day");
        assertThat(publish(draft, "2027-06-10").orThrow().rubric().version()).isEqualTo("1.1");
    }

    @Test
    void aVersionIsCurrentFromMidnightOfItsDayInTheZoneOfTheProgramme() {
        RubricDraft draft = edited("1.1");
        RubricReview review = agree(supervisor, draft);
        PublishedRubric published = publish(draft, "2026-08-01").orThrow();

        assertThat(published.effectiveFrom()).isEqualTo(Instant.parse("2026-07-31T23:00:00Z"));
        assertThat(at(BEFORE, () -> rubrics.current(NEEDLING)).rubric().version())
                .isEqualTo("1.0");
        assertThat(at(AFTER, () -> rubrics.current(NEEDLING))).isEqualTo(published);
        assertThat(at(BEFORE, rubrics::inForce)).allSatisfy(RubricReleasesTests::isShipped);
        assertThat(at(AFTER, rubrics::inForce)).contains(published).hasSize(Procedures.ALL.size());
        assertThat(at(AFTER, rubrics::inForce))
                .allSatisfy(one -> assertThat(one)
                        .isEqualTo(at(AFTER, () -> rubrics.current(one.rubric().procedure()))));
        RubricEffect effect = at(AFTER, () -> releases.of(director, NEEDLING)).get(0);
        assertThat(effect.review()).isEqualTo(review.id());
        assertThat(at(AFTER, () -> ledger.find(LeafKind.RUBRIC_EFFECT, effect.id())))
                .isPresent();
        assertThat(at(AFTER, () -> ledger.find(LeafKind.RUBRIC_REVIEW, review.id())))
                .isPresent();
        assertThat(at(AFTER, () -> drafts.open(director, NEEDLING))).isEmpty();
    }

    private static void isShipped(PublishedRubric one) {
        assertThat(one.rubric().version()).isEqualTo("1.0");
    }

    @Test
    void aVersionForTodayIsCurrentAtOnce() {
        RubricDraft draft = edited("1.1");
        agree(supervisor, draft);
        PublishedRubric published = publish(draft, "2026-06-10").orThrow();

        assertThat(published.effectiveFrom()).isEqualTo(published.publishedAt());
        assertThat(at(NOON, () -> rubrics.current(NEEDLING))).isEqualTo(published);
    }

    @Test
    void aCaseKeepsTheVersionItWasLoggedWithAcrossTheDay() {
        RubricDraft draft = edited("1.1");
        agree(supervisor, draft);
        PublishedRubric published = publish(draft, "2026-08-01").orThrow();
        UUID before = logged("K7-204", BEFORE);
        UUID after = logged("K7-205", AFTER);

        assertThat(version(before, AFTER)).isEqualTo("1.0");
        assertThat(version(after, AFTER)).isEqualTo(published.rubric().version());
    }

    @Test
    void aRetiredProcedureTakesNoNewCasesAndKeepsTheOldOnesReadable() {
        UUID before = logged("K7-204", NOON);
        assertThat(refusals(at(NOON, () -> releases.retire(director, NEEDLING, "2026-06-01", "No longer done."))))
                .containsExactly("refusal.rubric.day");
        at(NOON, () -> releases.retire(director, NEEDLING, "2026-08-01", "No longer done here."))
                .orThrow();

        assertThat(at(BEFORE, rubrics::takingCases)).contains(NEEDLING);
        assertThat(at(AFTER, rubrics::takingCases)).doesNotContain(NEEDLING).contains(Procedures.TRAB_FORNIX);
        assertThat(at(AFTER, () -> rubrics.current(NEEDLING)).rubric().version())
                .isEqualTo("1.0");
        assertThat(version(before, AFTER)).isEqualTo("1.0");
        assertThat(refusals(at(AFTER, () -> cases.log(programme.trainee(), entry("K7-205", AFTER)))))
                .containsExactly("refusal.case.procedure");
        assertThat(refusals(at(AFTER, () -> releases.retire(director, NEEDLING, "2026-08-02", "Again."))))
                .containsExactly("refusal.rubric.retired");

        RubricDraft draft = edited("2.0");
        agree(supervisor, draft);
        at(AFTER, () -> releases.publish(director, NEEDLING, draft.hash(), "2026-08-01", "Done again."))
                .orThrow();
        assertThat(at(AFTER.plusSeconds(60), rubrics::takingCases)).contains(NEEDLING);
    }

    @Test
    void othersNeitherWriteNorReviewNorPublish() {
        RubricDraft draft = edited("1.1");
        SignedIn trainee = programme.trainee();
        for (SignedIn who : new SignedIn[] {trainee, supervisor}) {
            assertThatThrownBy(() -> at(NOON, () -> drafts.begin(who, NEEDLING)))
                    .isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> at(NOON, () -> drafts.save(who, NEEDLING, 2, "x")))
                    .isInstanceOf(NotFound.class);
            assertThatThrownBy(
                            () -> at(NOON, () -> releases.publish(who, NEEDLING, draft.hash(), "2026-08-01", "Mine.")))
                    .isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> at(NOON, () -> releases.retire(who, NEEDLING, "2026-08-01", "Mine.")))
                    .isInstanceOf(NotFound.class);
        }
        assertThatThrownBy(() -> agree(trainee, draft)).isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> at(NOON, () -> drafts.open(director, "NOTHING")))
                .isInstanceOf(NotFound.class);
        TestOrganisation other = organisations.open();
        SignedIn stranger = other.join("Thaddeus Quillmere", Role.DIRECTOR);
        assertThatThrownBy(() -> other.in(() -> drafts.open(stranger, NEEDLING)))
                .isInstanceOf(NotFound.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update rubric_review set agrees = not agrees",
                "update rubric_effect set effective_from = now()",
                "delete from rubric_effect",
                "delete from rubric_draft"
            })
    void whatWasSaidAndDecidedCannotBeChangedInTheDatabase(String sql) {
        assertThatThrownBy(() -> organisation.in(
                        () -> transaction.execute(status -> jdbc.sql(sql).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
    }

    private RubricDraft edited(String version) {
        RubricDraft begun = at(NOON, () -> drafts.begin(director, NEEDLING));
        String text = begun.source().replace("version: \"1.0\"", "version: \"" + version + "\"");
        return at(NOON, () -> drafts.save(director, NEEDLING, begun.lockNo(), text))
                .orThrow();
    }

    private RubricReview agree(SignedIn who, RubricDraft draft) {
        return organisation
                .in(() -> reviews.review(who, NEEDLING, draft.hash(), "agree", "Clear to me."))
                .orThrow();
    }

    private Attempt<PublishedRubric> publish(RubricDraft draft, String day) {
        return at(NOON, () -> releases.publish(director, NEEDLING, draft.hash(), day, "Clearer words."));
    }

    private org.scrubline.casework.CaseEntry entry(String reference, Instant now) {
        return programme
                .entry(reference, now.minusSeconds(1800))
                .procedure(NEEDLING)
                .done();
    }

    private UUID logged(String reference, Instant now) {
        return at(now, () -> cases.log(programme.trainee(), entry(reference, now)))
                .orThrow()
                .id();
    }

    private String version(UUID caseId, Instant now) {
        UUID rubric = at(now, () -> sheets.toScore(supervisor.personId())).stream()
                .filter(open -> open.surgicalCase().id().equals(caseId))
                .map(OpenSheet::sheetId)
                .map(sheet -> organisation.in(() -> transaction.execute(
                        status -> jdbc.sql("select rubric_version_id from score_sheet where id = :id")
                                .param("id", sheet)
                                .query(UUID.class)
                                .single())))
                .findFirst()
                .orElseThrow();
        return at(now, () -> rubrics.byId(rubric)).orElseThrow().rubric().version();
    }

    private SignedIn another() {
        return programme.another("Ada Verney", Role.DIRECTOR);
    }

    private <T> T at(Instant now, Supplier<T> work) {
        return clock.at(now, () -> organisation.in(work));
    }

    private static java.util.List<String> refusals(Attempt<?> attempt) {
        return attempt.fold(
                done -> java.util.List.<String>of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }
}
