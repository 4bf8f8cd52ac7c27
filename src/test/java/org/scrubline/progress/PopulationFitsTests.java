package org.scrubline.progress;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.people.People;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.rubric.Procedures;
import org.scrubline.scoring.curve.Estimation;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** When a stored fit serves, and that it stays with its programme and as it was. */
@ScrublineTest
class PopulationFitsTests {

    @Autowired
    private PopulationFits fits;

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private People people;

    @Autowired
    private ScrublineClock clock;

    @Autowired
    private JdbcClient jdbc;

    @Autowired
    private TransactionTemplate transaction;

    private TestOrganisation organisation;
    private UUID programme;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        programme = organisation.programme().id();
    }

    @Test
    void aSmallProgrammeKeepsTheStartValuesAndSaysSo() {
        StoredFit stored = current(programme, 10);

        assertThat(stored.fit().estimation()).isEqualTo(Estimation.DIFFICULTY);
        assertThat(stored.sheets()).isEqualTo(10);
        assertThat(stored.dataUntil()).isEqualTo(sheets(10).get(9).signedAt());
        assertThat(rows("select count(*) from population_fit where not own_fit"))
                .isEqualTo(1);
    }

    @Test
    void theStoredFitServesHoweverManySheetsItHasNotSeenAndHoweverOldItIs() {
        StoredFit first = current(programme, 10);

        assertThat(current(programme, 40).fit()).isEqualTo(first.fit());
        clock.at(later(25), () -> assertThat(current(programme, 40).sheets()).isEqualTo(10));
        assertThat(rows("select count(*) from population_fit")).isEqualTo(1);
    }

    @Test
    void theNewestFitServes() {
        current(programme, 10);
        in(() -> fits.renew(programme, Procedures.TRAB_FORNIX, ProgrammeScores.of(sheets(30), Map.of())));

        assertThat(current(programme, 30).sheets()).isEqualTo(30);
        assertThat(rows("select count(*) from population_fit")).isEqualTo(2);
    }

    @Test
    void theSameSheetsGiveTheSameStoredText() {
        UUID other = otherProgramme();
        current(programme, 10);
        current(other, 10);

        assertThat(rows("select count(*) from population_fit")).isEqualTo(2);
        assertThat(rows("select count(distinct content) from population_fit")).isEqualTo(1);
    }

    @Test
    void anotherProgrammesOrOrganisationsFitIsNeverUsed() {
        UUID other = otherProgramme();
        current(programme, 12);

        assertThat(current(other, 10).sheets()).isEqualTo(10);
        TestOrganisation foreign = organisations.open();
        assertThat(rows(foreign, "select count(*) from population_fit")).isZero();
        assertThat(current(programme, 12).sheets()).isEqualTo(12);
        assertThat(rows("select count(*) from population_fit")).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"update population_fit set sheets = 1", "delete from population_fit"})
    void theServerItselfMayNotChangeAFit(String statement) {
        current(programme, 10);

        assertThatThrownBy(() -> organisation.in(
                        () -> transaction.execute(status -> jdbc.sql(statement).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
    }

    private Instant later(int hours) {
        return clock.instant().plus(Duration.ofHours(hours));
    }

    private UUID otherProgramme() {
        return organisation.in(() -> people.addProgramme("Other programme", "Europe/London")
                .orThrow()
                .id());
    }

    private StoredFit current(UUID ofProgramme, int sheets) {
        ProgrammeScores scores = ProgrammeScores.of(sheets(sheets), Map.of());
        return in(() -> fits.current(ofProgramme, Procedures.TRAB_FORNIX, () -> scores));
    }

    private StoredFit in(Supplier<StoredFit> work) {
        return organisation.in(() -> Objects.requireNonNull(transaction.execute(status -> work.get())));
    }

    /** The first so many of one series of cases; the same ids each time. */
    private static List<SignedSheet> sheets(int count) {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int day = 0; day < count; day++) {
            sheets.add(ofDay(day)
                    .inCase(new UUID(0x4000L + day, 0x8000000000000000L))
                    .by(day % 3)
                    .level("S1", 2 + day % 3)
                    .build());
        }
        return sheets;
    }

    private int rows(String query) {
        return rows(organisation, query);
    }

    private int rows(TestOrganisation in, String query) {
        return in.in(() -> Objects.requireNonNull(transaction.execute(
                status -> jdbc.sql(query).query(Integer.class).single())));
    }
}
