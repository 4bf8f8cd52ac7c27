package org.scrubline.casework;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Procedures;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.support.TransactionTemplate;

/** What is open, asked without reading the cases, is what reading them says: after each thing that can happen to one. */
@ScrublineTest
class OpenWorkTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture fixture;

    @Autowired
    SigningFixture signing;

    @Autowired
    RecordFixture records;

    @Autowired
    OldSheets oldSheets;

    @Autowired
    Cases cases;

    @Autowired
    Sheets sheets;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;
    Instant first;
    Instant second;
    Instant third;

    @BeforeEach
    void openATheatre() {
        Instant now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
        first = now.minus(Duration.ofDays(9));
        second = now.minus(Duration.ofDays(6));
        third = now.minus(Duration.ofDays(3));
        theatre = fixture.theatre(organisations);
    }

    @Test
    void nothingIsOpenBeforeTheFirstCase() {
        assertThat(open()).isEqualTo(read()).isEqualTo(Map.of());
    }

    @Test
    void anOpenSheetWaitsAndASignedOneDoesNot() {
        opened(second);
        signing.signed(theatre, first);
        assertThat(open()).isEqualTo(read()).isEqualTo(said(second, second));
        signing.signed(theatre, third);
        assertThat(open()).isEqualTo(read()).isEqualTo(said(third, second));
    }

    @Test
    void everySheetOfACaseWaitsForItself() {
        anotherScorerOf(opened(second));
        assertThat(open()).isEqualTo(read()).isEqualTo(said(second, second, second));
    }

    @Test
    void aRemovedSheetStaysACaseNeverScored() {
        opened(first);
        for (int day : new int[] {76, 90}) {
            clock.at(
                    first.plus(Duration.ofDays(day)),
                    () -> theatre.organisation().in(() -> {
                        oldSheets.review();
                        return day;
                    }));
        }
        assertThat(sheets()).isZero();
        assertThat(open()).isEqualTo(read()).isEqualTo(said(first, first));
    }

    @Test
    void aCaseWhoseSheetsAreAllVoidIsNone() {
        SignedIn director = theatre.organisation().join("Mirabel Osk", Role.DIRECTOR);
        signing.signed(theatre, first);
        SignedSheet wrong = signing.signed(theatre, second);
        records.askVoid(theatre, theatre.supervisor(), wrong.id()).orThrow();
        assertThat(open()).isEqualTo(read()).isEqualTo(said(second));
        records.decideVoid(theatre, director, wrong.id(), true).orThrow();
        assertThat(open()).isEqualTo(read()).isEqualTo(said(first));

        anotherScorerOf(wrong.sheetId());
        assertThat(open()).as("one sheet of it is not").isEqualTo(read()).isEqualTo(said(second, second));
    }

    @Test
    void assistingIsNotOperatingAndItsSheetWaits() {
        opened(first);
        opened(second);
        sql("""
                update case_trainee t
                set claimed_part = 'ASSISTED'
                from surgical_case c
                where c.id = t.case_id
                  and c.ended_at = cast(:end as timestamptz)
                """, Map.of("end", second.toString()));
        assertThat(open()).isEqualTo(read()).isEqualTo(said(first, first, second));
    }

    @Test
    void anotherProcedureOrProgrammeOrACaseNotEndedIsAnotherMatter() {
        opened(first);
        fixture.open(theatre, Procedures.NEEDLING, second);
        fixture.open(theatre, Procedures.TRAB_FORNIX, third, Procedures.NEEDLING);
        assertThat(open()).isEqualTo(read()).isEqualTo(said(first, first));
        assertThat(open(Procedures.NEEDLING))
                .isEqualTo(read(Procedures.NEEDLING))
                .isEqualTo(said(third, second, third));
        UUID other = theatre.organisation().anotherProgramme().programme().id();
        assertThat(theatre.organisation().in(() -> cases.openWork(other, Procedures.TRAB_FORNIX)))
                .isEmpty();
        sql("update surgical_case set state = 'STARTED', ended_at = null, ended_zone = null", Map.of());
        assertThat(open()).isEqualTo(read()).isEqualTo(Map.of());
    }

    /** Asks somebody else to score the same case too. */
    private void anotherScorerOf(UUID sheet) {
        SignedIn other = theatre.organisation().join("Pellam Orrick", Role.SUPERVISOR);
        sql("""
                insert into score_sheet (
                    tenant_id, id, case_id, trainee_id, scorer_id, rubric_version_id, state, opened_at, touched_at)
                select tenant_id, :other, case_id, trainee_id, :other, rubric_version_id, 'OPEN', opened_at, touched_at
                from score_sheet
                where id = :sheet
                """, Map.of("sheet", sheet, "other", other.personId()));
    }

    private UUID opened(Instant endedAt) {
        return signing.blank(theatre, endedAt);
    }

    private int sheets() {
        return theatre.organisation()
                .in(() -> sheets.toScore(theatre.supervisor().personId()))
                .size();
    }

    private Map<UUID, OpenWork> said(Instant lastOperated, Instant... unsigned) {
        return Map.of(theatre.trainee().personId(), new OpenWork(List.of(unsigned), lastOperated));
    }

    private Map<UUID, OpenWork> open() {
        return open(Procedures.TRAB_FORNIX);
    }

    private Map<UUID, OpenWork> open(String procedure) {
        return theatre.organisation().in(() -> cases.openWork(programme(), procedure));
    }

    private Map<UUID, OpenWork> read() {
        return read(Procedures.TRAB_FORNIX);
    }

    private Map<UUID, OpenWork> read(String procedure) {
        List<EndedCase> all = theatre.organisation().in(() -> cases.ended(programme(), procedure));
        Map<UUID, OpenWork> read = new HashMap<>();
        all.stream().collect(Collectors.groupingBy(EndedCase::traineeId)).forEach((trainee, ended) -> {
            Instant last = ended.stream()
                    .filter(one -> one.claimedPart() != Part.ASSISTED)
                    .map(EndedCase::endedAt)
                    .max(Instant::compareTo)
                    .orElse(null);
            List<Instant> unsigned = ended.stream()
                    .flatMap(one -> Collections.nCopies(one.waiting(), one.endedAt()).stream())
                    .toList();
            read.put(trainee, new OpenWork(unsigned, last));
        });
        return read;
    }

    private UUID programme() {
        return theatre.organisation().programme().id();
    }

    private void sql(String statement, Map<String, ?> values) {
        theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql(statement).params(values).update()));
    }
}
