package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.jobs.JobsNow;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubrics;
import org.scrubline.scoring.curve.CompetencyModel;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/** When population values are renewed: at night, and after twenty sign-offs; never while somebody waits for a page. */
@ScrublineTest
class RefitTests {

    private static final Instant START =
            Instant.now().minus(Duration.ofDays(300)).truncatedTo(ChronoUnit.MINUTES);

    @Autowired
    private RefitAfterSigning afterSigning;

    @Autowired
    private NightlyRefit nightly;

    @Autowired
    private JobsNow jobs;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private Rubrics rubrics;

    @Autowired
    private History history;

    @Autowired
    private MockMvc mvc;

    @Autowired
    private ScrublineClock clock;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    private TestOrganisation organisation;
    private UUID programme;
    private SignedIn trainee;
    private List<SignedIn> scorers;
    private int cases;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        programme = organisation.programme().id();
        SignedIn director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        scorers = List.of(
                organisation.join("Ottilie Brannock", Role.SUPERVISOR),
                organisation.join("Ludo Karsenmark", Role.SUPERVISOR));
        organisation.in(() -> rubrics.publishLibrary(director.personId()).orThrow());
    }

    @Test
    void theNightStoresAFitWithItsEngineAndDataCutOff() {
        SignedSheet newest = sign(5);

        night();

        assertThat(fits()).singleElement().isEqualTo(new Kept(CompetencyModel.VERSION, newest.signedAt(), 5));
    }

    @Test
    void aNightWithoutANewSheetStoresNothing() {
        night();
        assertThat(fits()).as("no sheet at all").isEmpty();

        sign(5);
        night();
        night();
        assertThat(fits()).hasSize(1);

        sign(1);
        night();
        assertThat(fits()).extracting(Kept::sheets).containsExactly(5, 6);
    }

    @Test
    void twentySignOffsRenewTheValuesOnceAndNineteenDoNot() {
        sign(19);
        look();
        assertThat(fits()).isEmpty();

        sign(7);
        assertThat(waiting()).containsExactly(programme + "/" + Procedures.TRAB_FORNIX);
        look();
        look();
        assertThat(fits()).extracting(Kept::sheets).containsExactly(26);

        sign(19);
        look();
        assertThat(fits()).as("nineteen since the cut-off").hasSize(1);
        sign(1);
        look();
        assertThat(fits()).extracting(Kept::sheets).containsExactly(26, 46);
    }

    @Test
    void aQueuedRefitTheNightHasDoneDoesNothing() {
        sign(20);
        night();

        look();

        assertThat(fits()).hasSize(1);
    }

    @Test
    void aPageViewMakesTheFirstFitAndNeverAnother() throws Exception {
        sign(6);
        view();
        assertThat(fits()).extracting(Kept::sheets).containsExactly(6);

        sign(21);
        clock.at(clock.instant().plus(Duration.ofHours(26)), () -> {
            view();
            return true;
        });

        assertThat(fits()).hasSize(1);
    }

    /** One more than the last so many cases, a day apart, signed by each scorer in turn; returns the last. */
    private SignedSheet sign(int count) {
        SignedSheet last = null;
        for (int i = 0; i < count; i++) {
            last = history.signed(
                    organisation,
                    trainee,
                    scorers.get(cases % 2),
                    START.plus(Duration.ofDays(cases)),
                    Map.of("TF09", 3 + cases % 3));
            cases++;
        }
        return Objects.requireNonNull(last);
    }

    private void night() {
        organisation.in(() -> {
            nightly.run();
            return true;
        });
    }

    private void look() {
        jobs.runWaiting(organisation.tenant(), afterSigning);
    }

    private List<String> waiting() {
        return jobs.waiting(organisation.tenant(), afterSigning);
    }

    private void view() {
        try {
            mvc.perform(get("/progress").with(LogIn.as(trainee))).andExpect(status().isOk());
        } catch (Exception e) {
            throw new AssertionError(e);
        }
    }

    private List<Kept> fits() {
        return organisation.in(() -> Objects.requireNonNull(transaction.execute(status -> jdbc.sql("""
                        select engine_version, data_until, sheets
                        from population_fit
                        order by fitted_at
                        """)
                .query((row, n) -> new Kept(
                        row.getString("engine_version"),
                        row.getObject("data_until", java.time.OffsetDateTime.class)
                                .toInstant(),
                        row.getInt("sheets")))
                .list())));
    }

    /** What is stored of a fit. */
    private record Kept(String engine, Instant until, int sheets) {}
}
