package org.scrubline.casework.reference;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.TestProgramme;
import org.scrubline.cohort.Cohort;
import org.scrubline.cohort.CohortReport;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.rubric.change.RubricReleases;
import org.scrubline.support.History;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class ReferenceCasesTests {

    @Autowired
    ReferenceCases references;

    @Autowired
    Cohort cohort;

    @Autowired
    Rubrics rubrics;

    @Autowired
    RubricReleases releases;

    @Autowired
    History history;

    @Autowired
    ScrublineClock clock;

    @Autowired
    TestOrganisations organisations;

    TestProgramme here;
    SignedIn colleague;
    LocalDate today;

    @BeforeEach
    void openAProgramme() {
        here = TestProgramme.open(organisations.open(), rubrics);
        colleague = here.another("Dr Hesper Vantrelle", Role.SUPERVISOR);
        today = LocalDate.ofInstant(
                clock.instant(), here.organisation().programme().zone());
    }

    @Test
    void aSupervisorScoresACaseOnceAndReadsItAgain() {
        UUID id = added("REF-1");
        ReferenceFile open = open(here.supervisor(), id);
        assertThat(open.scores()).isTrue();
        assertThat(open.rubric()).isEqualTo(fornix());

        Map<String, String> answers = answers("4");
        answers.put("TF01", ReferenceCases.NOT_SEEN);
        score(here.supervisor(), id, answers).orThrow();
        assertThat(score(here.supervisor(), id, answers("2"))).satisfies(refusedWith("refusal.reference.scored"));

        ReferenceScoring own = open(here.supervisor(), id).own();
        assertThat(own).isNotNull();
        assertThat(own.levels())
                .containsEntry("TF09", 4)
                .hasSize(fornix().steps().size() - 1);
        assertThat(own.notSeen()).containsExactly("TF01");
        assertThat(open(here.supervisor(), id).scores()).isFalse();
    }

    @Test
    void nobodySeesOthersScoresBeforeScoringAndClosing() {
        UUID id = added("REF-1");
        score(colleague, id, answers("2")).orThrow();
        assertThat(open(here.supervisor(), id).own()).isNull();
        assertThat(open(here.supervisor(), id).scorings()).isEqualTo(1);
        assertThat(comparable(colleague)).as("scored, not closed").isEmpty();
        assertThat(all()).as("not closed").isEmpty();

        close(id);
        assertThat(comparable(here.supervisor())).as("closed, not scored").isEmpty();
        assertThat(comparable(colleague)).hasSize(1);
        assertThat(all())
                .singleElement()
                .satisfies(one -> assertThat(one.scorings())
                        .singleElement()
                        .extracting(ReferenceScoring::name)
                        .isEqualTo("Dr Hesper Vantrelle"));
    }

    @Test
    void aCaseClosesByADirectorOrAfterItsDay() {
        UUID id = added("REF-1");
        UUID other = added("REF-2");
        close(id);
        close(id);
        assertThat(score(colleague, id, answers("3"))).satisfies(refusedWith("refusal.reference.closed"));
        clock.at(
                clock.instant().plus(Duration.ofDays(9)),
                () -> assertThat(score(colleague, other, answers("3")))
                        .satisfies(refusedWith("refusal.reference.closed")));
        score(colleague, other, answers("3")).orThrow();
    }

    @Test
    void aRetiredProcedureGetsNoNewCaseAndTheOldOnesAreScored() {
        UUID before = added("REF-1");
        here.organisation()
                .in(() -> releases.retire(
                        here.director(), Procedures.TRAB_FORNIX, today.toString(), "No longer done here."))
                .orThrow();
        assertThat(add(here.director(), draft("REF-2", today.plusDays(7).toString())))
                .satisfies(refusedWith("refusal.reference.procedure"));
        assertThat(here.organisation()
                        .in(() -> references.list(here.director(), here.programme()))
                        .procedures())
                .extracting(Rubric::procedure)
                .contains(Procedures.NEEDLING)
                .doesNotContain(Procedures.TRAB_FORNIX);
        score(colleague, before, answers("3")).orThrow();
    }

    @Test
    void everyStepNeedsAnAnswerAndOneALevel() {
        UUID id = added("REF-1");
        Map<String, String> without = answers("3");
        without.remove("TF09");
        assertThat(score(colleague, id, without)).satisfies(refusedWith("refusal.reference.blank"));
        assertThat(score(colleague, id, Map.of("TF09", "6"))).satisfies(refusedWith("refusal.reference.level"));
        assertThat(score(colleague, id, Map.of("XX01", "3"))).satisfies(refusedWith("refusal.reference.level"));
        assertThat(score(colleague, id, answers(ReferenceCases.NOT_SEEN)))
                .satisfies(refusedWith("refusal.reference.nothing-seen"));
        SignedIn shared = here.organisation().joinShared("Theatre 2", Role.SUPERVISOR);
        assertThat(score(shared, id, answers("3"))).satisfies(refusedWith("refusal.reference.shared"));
        assertThat(open(colleague, id).scorings()).isZero();
    }

    @Test
    void aDraftIsRefusedFieldByField() {
        assertThat(add(here.director(), new ReferenceDraft("12345678", "", "NOSE", "E", "", "soon")))
                .satisfies(refusedWith(
                        "refusal.reference.reference",
                        "refusal.reference.title",
                        "refusal.reference.band",
                        "refusal.reference.film",
                        "refusal.reference.day",
                        "refusal.reference.procedure"));
        String yesterday = today.minusDays(1).toString();
        assertThat(add(here.director(), draft("REF-1", yesterday))).satisfies(refusedWith("refusal.reference.day"));
        add(here.director(), draft("REF-1", today.toString())).orThrow();
        assertThat(add(here.director(), draft("REF-1", today.toString())))
                .satisfies(refusedWith("refusal.reference.taken"));
    }

    @Test
    void whereTheFilmIsPointsToNoPatient() {
        ReferenceDraft draft = new ReferenceDraft(
                "REF-1",
                "An even flap",
                Procedures.TRAB_FORNIX,
                "B",
                "Film of the patient with NHS number 943 476 5919.",
                today.toString());
        Attempt<ReferenceCase> attempt = add(here.director(), draft);
        assertThat(keys(attempt)).singleElement().asString().startsWith("refusal.identity.");
    }

    @Test
    void onlyDirectorsAddAndCloseAndOnlySupervisorsScore() {
        UUID id = added("REF-1");
        SignedIn member = here.another("Prof Thaddeus Quillmere", Role.COMMITTEE_MEMBER);
        SignedIn elsewhere = here.organisation().anotherProgramme().join("Dr Ruy Estavane", Role.SUPERVISOR);
        assertThatThrownBy(() -> add(colleague, draft("REF-2", today.toString())))
                .isInstanceOf(NotFound.class);
        assertThatThrownBy(() -> here.organisation().in(() -> {
                    references.close(colleague, id);
                    return true;
                }))
                .isInstanceOf(NotFound.class);
        for (SignedIn who : List.of(here.trainee(), member, elsewhere)) {
            assertThatThrownBy(() -> open(who, id)).isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> score(who, id, answers("3"))).isInstanceOf(NotFound.class);
            assertThatThrownBy(() -> comparable(who)).isInstanceOf(NotFound.class);
        }
        assertThatThrownBy(() -> score(here.director(), id, answers("3"))).isInstanceOf(NotFound.class);
    }

    /** Everything kept about the programme but the scores themselves, the audit trail and the ledger stays as it is. */
    @Test
    void scoresOfReferenceCasesCountForNobody() throws Exception {
        Instant ended = clock.instant().minus(Duration.ofDays(3));
        history.signed(here.organisation(), here.trainee(), here.supervisor(), ended, Map.of("TF09", 2));
        UUID id = added("REF-1");
        CohortReport numbers = numbers();
        Map<String, String> rows = rows();

        score(here.supervisor(), id, answers("5")).orThrow();
        score(colleague, id, answers("1")).orThrow();

        assertThat(rows()).isEqualTo(rows).containsKeys("signed_step", "surgical_case", "outcome_entry", "notice");
        assertThat(numbers().rows()).usingRecursiveComparison().isEqualTo(numbers.rows());
        assertThat(numbers.rows()).extracting(row -> row.cases()).contains(1);
    }

    private CohortReport numbers() {
        return here.organisation().in(() -> cohort.report(here.director(), here.programme(), Procedures.TRAB_FORNIX));
    }

    /** A hash of the rows of each walled table. */
    private Map<String, String> rows() throws Exception {
        Map<String, String> rows = new TreeMap<>();
        try (Connection superuser = TestDatabase.superuser();
                Statement statement = superuser.createStatement()) {
            List<String> tables = new ArrayList<>();
            try (ResultSet walled = statement.executeQuery("""
                    select relname
                    from pg_class
                    where relnamespace = 'public'::regnamespace
                      and relkind = 'r'
                      and relforcerowsecurity
                      and relname !~ '^(reference_(scoring|step)|audit_|ledger_)'
                    """)) {
                while (walled.next()) {
                    tables.add(walled.getString(1));
                }
            }
            for (String table : tables) {
                try (ResultSet hash = statement.executeQuery(
                        """
                        select md5(coalesce(string_agg(t::text, ' ' order by t::text), ''))
                        from %s t
                        where tenant_id = '%s'
                        """.formatted(table, here.organisation().tenant()))) {
                    hash.next();
                    rows.put(table, hash.getString(1));
                }
            }
        }
        return rows;
    }

    private UUID added(String reference) {
        return add(here.director(), draft(reference, today.plusDays(7).toString()))
                .orThrow()
                .id();
    }

    private static ReferenceDraft draft(String reference, String day) {
        return new ReferenceDraft(
                reference, "An even flap", Procedures.TRAB_FORNIX, "B", "Teaching drive, folder of flaps.", day);
    }

    private Attempt<ReferenceCase> add(SignedIn who, ReferenceDraft draft) {
        return here.organisation().in(() -> references.add(who, here.programme(), draft));
    }

    private void close(UUID id) {
        here.organisation().in(() -> {
            references.close(here.director(), id);
            return true;
        });
    }

    private ReferenceFile open(SignedIn who, UUID id) {
        return here.organisation().in(() -> references.open(who, id));
    }

    private Attempt<ReferenceScoring> score(SignedIn who, UUID id, Map<String, String> answers) {
        return here.organisation().in(() -> references.score(who, id, answers));
    }

    private List<ScoredReference> comparable(SignedIn who) {
        return here.organisation().in(() -> references.comparable(who, here.programme()));
    }

    private List<ScoredReference> all() {
        return here.organisation().in(() -> references.allComparable(here.director(), here.programme()));
    }

    private Rubric fornix() {
        return here.organisation()
                .in(() -> rubrics.current(Procedures.TRAB_FORNIX))
                .rubric();
    }

    private Map<String, String> answers(String answer) {
        Map<String, String> answers = new HashMap<>();
        fornix().steps().forEach(step -> answers.put(step.code(), answer));
        return answers;
    }

    private static Consumer<Attempt<?>> refusedWith(String... keys) {
        return attempt -> assertThat(keys(attempt)).containsExactly(keys);
    }

    private static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(reason -> reason.messageKey()).toList());
    }
}
