package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.people.People;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** A sheet goes from the trainee's screen to the supervisor's own device by a code that works once. */
@ScrublineTest
class HandOffTests {

    @Autowired
    HandOffs handOffs;

    @Autowired
    Cases cases;

    @Autowired
    Sheets sheets;

    @Autowired
    People people;

    @Autowired
    Rubrics rubrics;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    SignedIn second;
    UUID sheet;

    @BeforeEach
    void logACase() {
        here = TestProgramme.open(organisations.open(), rubrics);
        second = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
        Instant ended = Clock.systemUTC().instant().minus(Duration.ofHours(1));
        in(() -> cases.log(here.trainee(), here.entry("K7-204", ended).done()).orThrow());
        sheet = in(() -> sheets.toScore(here.supervisor().personId())).get(0).sheetId();
    }

    @Test
    void theSupervisorAskedOpensTheSheetOnce() {
        String code = offer().code();
        assertThat(code).matches("[A-HJ-NP-Z2-9]{4}-[A-HJ-NP-Z2-9]{4}");
        assertThat(take(
                                here.supervisor(),
                                code.toLowerCase(java.util.Locale.ROOT).replace('-', ' '),
                                false)
                        .orThrow())
                .isEqualTo(sheet);
        assertThat(keys(take(here.supervisor(), code, false))).containsExactly("hand-off.refusal.code");
    }

    @Test
    void onlyTheHashIsKept() {
        String code = offer().code();
        List<String> stored = in(() -> transaction.execute(status ->
                jdbc.sql("select code_hash from hand_off").query(String.class).list()));
        assertThat(stored).hasSize(1).allMatch(hash -> hash.matches("[0-9a-f]{64}") && !hash.contains(code));
    }

    @Test
    void aCodeLivesTwelveHoursAndDiesWithTheNextOne() {
        HandOffs.Offer first = offer();
        HandOffs.Offer newer = offer();
        assertThat(keys(take(here.supervisor(), first.code(), false))).containsExactly("hand-off.refusal.code");
        Instant last = newer.expiresAt();
        assertThat(keys(clock.at(last, () -> take(here.supervisor(), newer.code(), false))))
                .containsExactly("hand-off.refusal.code");
        assertThat(clock.at(last.minusMillis(1), () -> take(here.supervisor(), newer.code(), false))
                        .orThrow())
                .isEqualTo(sheet);
    }

    @Test
    void aCodeDiesWithTheFirstWordOnTheSheetAndNoneIsMadeAfterIt() {
        String code = offer().code();
        in(() -> sheets.change(here.supervisor(), sheet, 0, new SheetChange.SetStep("TF01", new StepState.Scored(4)))
                .orThrow());
        assertThat(keys(take(here.supervisor(), code, false))).containsExactly("hand-off.refusal.code");
        assertThat(keys(in(() -> handOffs.offer(here.trainee(), sheet)))).containsExactly("hand-off.refusal.opened");
    }

    @Test
    void anotherSupervisorSaysSoAndIsRecordedAsHandedOn() {
        String code = offer().code();
        assertThat(keys(take(second, code, false))).containsExactly("hand-off.refusal.instead");
        assertThat(in(() -> sheets.get(sheet)).scorerId())
                .isEqualTo(here.supervisor().personId());

        assertThat(take(second, code, true).orThrow()).isEqualTo(sheet);

        assertThat(in(() -> sheets.get(sheet)).scorerId()).isEqualTo(second.personId());
        List<String> kept = in(() -> transaction.execute(status ->
                jdbc.sql("""
                                select from_id || ' ' || to_id || ' ' || assigned_by || ' ' || reason
                                from sheet_assignment
                                where sheet_id = :sheet
                                """).param("sheet", sheet).query(String.class).list()));
        assertThat(kept)
                .containsExactly(here.supervisor().personId() + " " + second.personId() + " " + second.personId()
                        + " Taken over with the code the trainee showed.");
    }

    @Test
    void whoMayNotScoreMayNotTakeTheSheet() {
        String code = offer().code();
        SignedIn elsewhere = TestProgramme.open(organisations.open(), rubrics).supervisor();
        assertThat(keys(take(here.director(), code, true))).containsExactly("hand-off.refusal.code");
        assertThat(keys(org.scrubline.platform.TenantScope.call(
                        elsewhere.tenantId(), () -> handOffs.take(elsewhere, code, true))))
                .containsExactly("hand-off.refusal.code");
        in(() -> {
            people.declareConflict(here.trainee().personId(), second.personId());
            return true;
        });
        assertThat(keys(take(second, code, true))).containsExactly("refusal.case.supervisor.conflict");
        assertThat(in(() -> sheets.get(sheet)).scorerId())
                .isEqualTo(here.supervisor().personId());
    }

    @Test
    void onlyTheTraineeOfTheSheetMakesACode() {
        SignedIn other = here.another("Ilan Morwen", Role.TRAINEE);
        for (SignedIn who : List.of(other, here.supervisor(), here.director())) {
            assertThatThrownBy(() -> in(() -> handOffs.offer(who, sheet))).isInstanceOf(NotFound.class);
        }
    }

    @Test
    void guessingIsSlowed() {
        String code = offer().code();
        for (int guess = 0; guess < 6; guess++) {
            take(here.supervisor(), "AAAA-AAA" + (2 + guess), false);
        }
        assertThat(keys(take(here.supervisor(), code, false))).containsExactly("hand-off.refusal.wait");
        assertThat(take(second, code, true).orThrow()).as("nobody else waits").isEqualTo(sheet);
    }

    private HandOffs.Offer offer() {
        return in(() -> handOffs.offer(here.trainee(), sheet)).orThrow();
    }

    private Attempt<UUID> take(SignedIn who, String code, boolean instead) {
        return in(() -> handOffs.take(who, code, instead));
    }

    private <T> T in(Supplier<T> work) {
        return here.organisation().in(work);
    }

    private static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }
}
