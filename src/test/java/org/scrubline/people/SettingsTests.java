package org.scrubline.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;

/** Programme settings. The defaults expected here are those the project set for itself; they have no outside source. */
@ScrublineTest
class SettingsTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    Settings settings;

    @Autowired
    Introductions introductions;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    UUID programme;
    SignedIn director;

    @BeforeEach
    void openAProgramme() {
        organisation = organisations.open();
        programme = organisation.programme().id();
        director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
    }

    @ParameterizedTest
    @CsvSource({
        "LATE_AFTER, 72",
        "CLOSED_AFTER, 14",
        "CLOCK_SKEW, 10",
        "NEW_SCORER_UNTIL, 10",
        "INTRODUCTION_FIRST, 0",
        "CONTEST_WITHIN, 28",
        "CONTEST_TERM, 30",
        "CONTEST_REPLY, 7",
        "CHART_CASES, 30",
        "SHOWN_CASES, 5",
        "SHOWN_SCORERS, 2",
        "SHOWN_STEP_SCORES, 3",
        "SHOWN_INDEX, 50",
        "SUPPORTS_CASES, 12",
        "SUPPORTS_SCORERS, 4",
        "MOST_BY_ONE, 40",
        "GAP_SHOWN, 56",
        "GAP_SUSPENDS, 26",
        "QUORUM, 3",
        "LETTER_WITHIN, 10",
        "APPEAL_WITHIN, 28"
    })
    void aProgrammeThatChangedNothingWorksByTheDefaults(SettingKey key, int usual) {
        assertThat(now().value(key)).isEqualTo(usual);
        assertThat(key.takes(usual)).isTrue();
    }

    @Test
    void theTypedValuesCarryTheirUnits() {
        ProgrammeSettings defaults = ProgrammeSettings.DEFAULTS;
        assertThat(defaults.lateAfter()).isEqualTo(Duration.ofHours(72));
        assertThat(defaults.closedAfter()).isEqualTo(Duration.ofDays(14));
        assertThat(defaults.clockSkew()).isEqualTo(Duration.ofMinutes(10));
        assertThat(defaults.gapSuspends()).isEqualTo(Duration.ofDays(182));
        assertThat(defaults.shownIndex()).isEqualTo(.5);
        assertThat(defaults.introductionFirst()).isFalse();
        assertThat(defaults.contestWithin()).isEqualTo(Duration.ofDays(28));
        assertThat(defaults.contestTerm()).isEqualTo(Duration.ofDays(30));
        assertThat(defaults.contestReply()).isEqualTo(Duration.ofDays(7));
        assertThat(defaults.quorum()).isEqualTo(3);
        assertThat(defaults.letterWithinWorkingDays()).isEqualTo(10);
        assertThat(defaults.appealWithin()).isEqualTo(Duration.ofDays(28));
    }

    @Test
    void everyKeyHasRoomBetweenItsEnds() {
        assertThat(Arrays.stream(SettingKey.values())).allSatisfy(key -> {
            assertThat(key.least()).isLessThan(key.most());
            assertThat(key.takes(key.least() - 1)).isFalse();
            assertThat(key.takes(key.most() + 1)).isFalse();
        });
        assertThat(SettingKey.SUPPORTS_CASES.least())
                .as("no programme can show more strictly than it decides")
                .isGreaterThanOrEqualTo(SettingKey.SHOWN_CASES.most());
    }

    @Test
    void theNewestChangeHoldsAndTheEarlierStays() {
        Instant first = Instant.parse("2026-03-01T09:00:00Z");
        clock.at(first, () -> change(SettingKey.LATE_AFTER, "48", "We agreed on two days."));
        clock.at(first.plusSeconds(60), () -> change(SettingKey.LATE_AFTER, "60", "Two days were too short."));

        assertThat(now().lateAfter()).isEqualTo(Duration.ofHours(60));
        List<SettingChange> history = organisation.in(() -> settings.history(programme));
        assertThat(history).extracting(SettingChange::value).containsExactly(60, 48);
        assertThat(history.get(0).reason()).isEqualTo("Two days were too short.");
        assertThat(history.get(0).changedBy()).isEqualTo("Corisande Delmarr");
        assertThat(history)
                .allSatisfy(change -> assertThat(organisation.in(() -> ledger.find(LeafKind.SETTING, change.id())))
                        .isPresent());
    }

    @Test
    void settingWhatHoldsAlreadyAddsNothing() {
        change(SettingKey.QUORUM, "4", "A larger committee.").orThrow();
        change(SettingKey.QUORUM, "4", "A larger committee.").orThrow();
        assertThat(organisation.in(() -> settings.history(programme))).hasSize(1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "0", "169", "72.5", "-1", "seventy", "99999999999"})
    void aValueOutOfRangeOrNoNumberIsRefused(String typed) {
        assertRefused(change(SettingKey.LATE_AFTER, typed, "Because."), "value");
        assertThat(organisation.in(() -> settings.history(programme))).isEmpty();
    }

    @Test
    void aChangeNeedsItsReason() {
        assertRefused(change(SettingKey.LATE_AFTER, "48", "  "), "reason");
        assertRefused(change(SettingKey.LATE_AFTER, "48", "x".repeat(501)), "reason");
        change(SettingKey.LATE_AFTER, "48", "x".repeat(500)).orThrow();
    }

    @Test
    void onlyDirectorsAndAdministratorsOfTheProgrammeChangeIt() {
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        SignedIn elsewhere = organisations.open().join("Corin Vale", Role.DIRECTOR);
        for (SignedIn who : List.of(supervisor, elsewhere)) {
            assertThatThrownBy(() -> change(who, SettingKey.QUORUM, "4")).isInstanceOf(NotFound.class);
        }
        assertThat(change(administrator, SettingKey.QUORUM, "4").orThrow().quorum())
                .isEqualTo(4);
    }

    @Test
    void aSettingOfOneProgrammeLeavesAnotherAlone() {
        change(SettingKey.QUORUM, "5", "A larger committee.").orThrow();
        UUID other = organisation.in(() -> people.addProgramme("Second programme", "Europe/London")
                .orThrow()
                .id());
        assertThat(organisation.in(() -> settings.of(other)).quorum()).isEqualTo(3);
    }

    @Test
    void theEarliestIntroductionHoldsAndIsKeptOnce() {
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        introduce(director, supervisor, "2026-03-12").orThrow();
        introduce(director, supervisor, "2026-03-12").orThrow();
        introduce(director, supervisor, "2026-02-01").orThrow();
        assertThat(organisation.in(() -> introductions.of(programme)))
                .containsEntry(supervisor.personId(), LocalDate.of(2026, 2, 1));
    }

    @Test
    void anIntroductionIsOfWhoScoresOrMayTeachOneDayOnADayThatHasBeen() {
        SignedIn supervisor = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        SignedIn analyst = organisation.join("Maud Oderlake", Role.ANALYST);
        assertRefused(introduce(director, analyst, "2026-03-12"), "supervisor");
        for (String day : List.of("", "12.3.2026", "2999-01-01", "1066-10-14")) {
            assertRefused(introduce(director, supervisor, day), "day");
        }
        assertThatThrownBy(() -> introduce(supervisor, supervisor, "2026-03-12"))
                .isInstanceOf(NotFound.class);
        assertThat(organisation.in(() -> introductions.of(programme))).isEmpty();
    }

    private ProgrammeSettings now() {
        return organisation.in(() -> settings.of(programme));
    }

    private Attempt<ProgrammeSettings> change(SettingKey key, String typed, String reason) {
        return organisation.in(() -> settings.change(director, programme, key, typed, reason));
    }

    private Attempt<ProgrammeSettings> change(SignedIn who, SettingKey key, String typed) {
        return organisation.in(() -> settings.change(who, programme, key, typed, "Because."));
    }

    private Attempt<LocalDate> introduce(SignedIn who, SignedIn supervisor, String day) {
        return organisation.in(() -> introductions.record(who, programme, supervisor.personId(), day));
    }

    private static void assertRefused(Attempt<?> attempt, String field) {
        assertThat(attempt.<List<Refusal>>fold(done -> List.of(), reasons -> reasons))
                .extracting(Refusal::field)
                .containsExactly(field);
    }
}
