package org.scrubline.rubric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** Publishing, against a real PostgreSQL. */
@ScrublineTest
class RubricsTests {

    private static final Instant MARCH = Instant.parse("2026-03-02T08:00:00.123456789Z");
    private static final Instant JUNE = Instant.parse("2026-06-01T08:00:00Z");

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private RubricLibrary library;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private ScrublineClock clock;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private RubricStore store;

    private TestOrganisation organisation;
    private UUID director;

    @BeforeEach
    void openAnOrganisation() {
        organisation = organisations.open();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR).personId();
    }

    @Test
    void theLibraryIsPublishedWhole() {
        List<PublishedRubric> published =
                organisation.in(() -> rubrics.publishLibrary(director).orThrow());

        assertThat(published).extracting(PublishedRubric::rubric).isEqualTo(library.rubrics());
        assertThat(organisation.in(rubrics::published)).containsExactlyElementsOf(published);
        assertThat(organisation.in(rubrics::inForce)).containsExactlyElementsOf(published);
    }

    @Test
    void aVersionIsReadBackAsItWasPublished() {
        PublishedRubric published = clock.at(MARCH, () -> publish(needling("1.0", "Needling")));

        RubricContent content = organisation.in(() -> transaction.execute(status -> store.content(published.id())));

        assertThat(content.rubric()).isEqualTo(published.rubric());
        assertThat(organisation.in(() -> rubrics.byId(published.id()))).contains(published);
        assertThat(published.publishedAt()).isEqualTo(Instant.parse("2026-03-02T08:00:00.123456Z"));
        assertThat(published.contentHash())
                .isEqualTo(RubricContent.of(published.rubric()).hash());
    }

    @Test
    void theStepsStandInTheirOwnTable() {
        PublishedRubric published = publish(library.rubric(Procedures.TRAB_FORNIX));

        List<String> steps = organisation.in(() -> transaction.execute(status ->
                jdbc.sql("""
                        select step_code || ' ' || phase || ' ' || critical
                        from rubric_step
                        where rubric_version_id = :id
                        order by position
                        """).param("id", published.id()).query(String.class).list()));

        assertThat(steps).hasSize(19).startsWith("TF01 PREPARATION true", "TF02 PREPARATION false");
    }

    @Test
    void theSameContentAgainGivesTheVersionAlreadyThere() {
        PublishedRubric first = publish(needling("1.0", "Needling"));
        PublishedRubric again = publish(needling("1.0", "Needling"));

        assertThat(again).isEqualTo(first);
        assertThat(organisation.in(rubrics::published)).containsExactly(first);
    }

    @Test
    void otherContentUnderTheSameVersionIsRefusedWithAReason() {
        PublishedRubric first = publish(needling("1.0", "Needling"));

        Attempt<PublishedRubric> attempt =
                organisation.in(() -> rubrics.publish(needling("1.0", "Needling, other words"), director));

        assertThat(attempt)
                .isEqualTo(Attempt.refused(Refusal.of("rubric.refusal.version-taken", "Needling, other words", "1.0")));
        assertThat(organisation.in(rubrics::published)).containsExactly(first);
    }

    @Test
    void theLibraryIsPublishedWholeOrNotAtAll() {
        PublishedRubric own = publish(needling("1.0", "Our own needling"));

        Attempt<List<PublishedRubric>> attempt = organisation.in(() -> rubrics.publishLibrary(director));

        assertThat(attempt).isInstanceOf(Attempt.Refused.class);
        assertThat(organisation.in(rubrics::published)).containsExactly(own);
    }

    @Test
    void theCurrentVersionIsTheOnePublishedLast() {
        clock.at(JUNE, () -> publish(needling("2.0", "Needling")));
        PublishedRubric older = clock.at(MARCH, () -> publish(needling("10.0", "Needling")));

        PublishedRubric current = organisation.in(() -> rubrics.current(Procedures.NEEDLING));

        assertThat(current.rubric().version()).isEqualTo("2.0");
        assertThat(organisation.in(() -> rubrics.byId(older.id()))).contains(older);
        assertThat(organisation.in(rubrics::published))
                .extracting(published -> published.rubric().version())
                .containsExactly("2.0", "10.0");
    }

    @Test
    void aProcedureWithoutARubricIsNotFound() {
        assertThatThrownBy(() -> organisation.in(() -> rubrics.current(Procedures.NEEDLING)))
                .isInstanceOf(NotFound.class);
        assertThat(organisation.in(rubrics::published)).isEmpty();
        assertThat(organisation.in(rubrics::inForce)).isEmpty();
    }

    @Test
    void anotherOrganisationSeesNothingEvenOfWhatIsInMemory() {
        PublishedRubric published = publish(needling("1.0", "Needling"));
        assertThat(organisation.in(() -> rubrics.byId(published.id()))).contains(published);

        TestOrganisation other = organisations.open();

        assertThat(other.in(() -> rubrics.byId(published.id()))).isEmpty();
        assertThat(other.in(rubrics::published)).isEmpty();
        assertThat(other.in(rubrics::inForce)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update rubric_version set title = 'Changed'",
                "update rubric_step set critical = not critical",
                "delete from rubric_version",
                "delete from rubric_step",
                "truncate rubric_step"
            })
    void thePublishedCannotBeChangedInTheDatabase(String sql) {
        publish(needling("1.0", "Needling"));

        assertThatThrownBy(() -> organisation.in(
                        () -> transaction.execute(status -> jdbc.sql(sql).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
    }

    private PublishedRubric publish(Rubric rubric) {
        return organisation.in(() -> rubrics.publish(rubric, director).orThrow());
    }

    private Rubric needling(String version, String title) {
        Rubric shipped = library.rubric(Procedures.NEEDLING);
        return new Rubric(shipped.procedure(), version, title, shipped.family(), shipped.steps());
    }
}
