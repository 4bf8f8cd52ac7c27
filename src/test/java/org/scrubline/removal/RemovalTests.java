package org.scrubline.removal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.sql.Connection;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.ServiceLoader;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.CheckResult;
import org.scrubline.ledger.check.DatabaseCheck;
import org.scrubline.ledger.check.Finding;
import org.scrubline.ledger.check.Known;
import org.scrubline.ledger.check.Problem;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.Credential;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.removal.RemovalIntent.Act;
import org.scrubline.retention.Retention;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningFixture;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.transaction.support.TransactionTemplate;

/** Signed records after their term: two people, a tombstone, and nothing else by the same way. */
@ScrublineTest
class RemovalTests {

    private static final String WHY = "The term of the programme is over.";
    private static final Credential PASSWORD = new Credential.Password(TestOrganisations.PASSWORD);
    private static final Duration SEVEN_YEARS = Duration.ofDays(7 * 366);

    @Autowired
    MockMvc mvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture fixture;

    @Autowired
    RecordFixture acts;

    @Autowired
    Removals removals;

    @Autowired
    Retention retention;

    @Autowired
    Passkeys passkeys;

    @Autowired
    Checkpoints checkpoints;

    @Autowired
    ScrublineClock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;
    SignedIn director;
    SignedIn administrator;
    SignedSheet old;

    @BeforeEach
    void aTraineeLeftSevenYearsAgo() {
        theatre = sheets.theatre(organisations);
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        administrator = theatre.organisation().join("Pell Ormandine", Role.ADMINISTRATOR);
        Instant then = clock.instant().minus(SEVEN_YEARS);
        old = clock.at(then, () -> fixture.signed(theatre, then.minus(Duration.ofHours(2))));
        clock.at(then, () -> acts.contest(theatre, theatre.trainee(), old.id()).orThrow());
        trainingEnded(then);
    }

    @Test
    void twoPeopleRemoveThemAndTheVerifierSaysWhoAndStaysSound() throws Exception {
        theatre.organisation().in(checkpoints::publish);
        UUID request = ask(director).orThrow();
        assertThat(rows("signed_sheet")).as("one alone removes nothing").isEqualTo(1);
        confirm(administrator, request).orThrow();

        for (String table : List.of("signed_sheet", "signed_step", "contest", "countersign_reason", "score_sheet")) {
            assertThat(rows(table)).as(table).isZero();
        }
        CheckResult result = check();
        assertThat(result.found()).isEmpty();
        assertThat(result.removals()).singleElement().satisfies(removal -> {
            assertThat(removal.askedBy()).isEqualTo("Corisande Delmarr");
            assertThat(removal.removedBy()).isEqualTo("Pell Ormandine");
            assertThat(removal.records()).isEqualTo(1);
        });
        assertThat(text("select content_hash from removed_record where kind = 'SIGNATURE'"))
                .isEqualTo(old.contentHash());
        mvc.perform(get("/signed/{id}", old.id()).with(LogIn.as(director))).andExpect(status().isNotFound());
    }

    @Test
    void whateverElseVanishesStaysFound() throws Exception {
        SignedSheet young = fixture.signed(newTrainee(), clock.instant().minus(Duration.ofHours(2)));
        confirm(administrator, ask(director).orThrow()).orThrow();
        CheckResult result = attacked("delete from signed_sheet where id = '" + young.id() + "'");
        assertThat(result.found()).extracting(Finding::problem).contains(Problem.ROWS_GONE);
        assertThat(attacked("delete from record_removal").found())
                .as("records whose tombstone is gone")
                .extracting(Finding::problem)
                .contains(Problem.ROWS_GONE);
        assertThat(attacked("update removed_record set record_id = '" + young.id() + "' where kind = 'SIGNATURE'")
                        .found())
                .extracting(Finding::problem)
                .contains(Problem.ROWS_CHANGED, Problem.ROWS_GONE);
        assertThat(check().sound()).isTrue();
    }

    @Test
    void onePersonAloneCannotConfirm() {
        UUID request = ask(director).orThrow();
        assertThat(keys(confirm(director, request))).containsExactly("refusal.removal.second");
        assertThat(ask(director).orThrow()).as("asked again").isEqualTo(request);
        assertThat(keys(ask(administrator))).containsExactly("refusal.removal.asked");
        assertThat(rows("signed_sheet")).isEqualTo(1);
    }

    @Test
    void aHoldStopsBothSteps() {
        UUID request = ask(director).orThrow();
        theatre.organisation()
                .in(() ->
                        retention.hold(director, programme(), theatre.trainee().personId(), "An appeal is open."))
                .orThrow();
        assertThat(keys(confirm(administrator, request))).containsExactly("refusal.removal.held");
        assertThat(rows("signed_sheet")).isEqualTo(1);
        theatre.organisation().in(() -> {
            retention.end(
                    director, retention.holds(director, programme()).get(0).id());
            return true;
        });
        assertThat(keys(confirm(administrator, request))).isEmpty();
    }

    @Test
    void beforeTheTermIsOverNothingCanBeAsked() {
        trainingEnded(clock.instant().minus(Duration.ofDays(5 * 365)));
        assertThat(keys(ask(director))).containsExactly("refusal.removal.term");
        assertThat(theatre.organisation().in(() -> removals.ended(director, programme())))
                .isEmpty();
    }

    @Test
    void nobodyElseReachesItAndAWrongPasswordRemovesNothing() throws Exception {
        for (SignedIn who : List.of(theatre.supervisor(), theatre.trainee())) {
            assertThatThrownBy(() -> ask(who)).isInstanceOf(NotFound.class);
            mvc.perform(get("/removals").with(LogIn.as(who))).andExpect(status().isNotFound());
        }
        assertThat(keys(theatre.organisation()
                        .in(() -> removals.ask(
                                director,
                                programme(),
                                theatre.trainee().personId(),
                                WHY,
                                new Credential.Password("not the password")))))
                .containsExactly("refusal.password.wrong");
    }

    @Test
    void withPasskeysBothSignaturesAreKeptAndVerified() throws Exception {
        RemovalIntent asking =
                RemovalIntent.of(Act.REMOVAL_ASKED, theatre.trainee().personId());
        UUID request = theatre.organisation()
                .in(() -> removals.ask(
                        director, programme(), theatre.trainee().personId(), WHY, answer(director, asking)))
                .orThrow();
        RemovalIntent confirming = RemovalIntent.of(Act.REMOVAL_CONFIRMED, request);
        assertThat(keys(confirm(administrator, request, answer(administrator, asking))))
                .containsExactly("refusal.passkey.CHALLENGE");
        confirm(administrator, request, answer(administrator, confirming)).orThrow();
        assertThat(rows("signature_assertion")).isEqualTo(2);
        assertThat(check().sound()).isTrue();
    }

    @Test
    void theDatabaseItselfRemovesNothingThatTheRuleDoesNotAllow() {
        UUID request = ask(director).orThrow();
        assertRefused("one person alone", () -> tombstone(request, director, true));
        SignedIn supervisor = theatre.supervisor();
        assertRefused("both must direct", () -> tombstone(request, supervisor, true));
        assertRefused("does not list exactly", () -> tombstone(request, administrator, false));
        assertRefused("there is no removal", () -> remove(UUID.randomUUID()));
        trainingEnded(clock.instant());
        assertRefused("the term is not over", () -> tombstone(request, administrator, true));
        assertThat(rows("signed_sheet")).isEqualTo(1);
    }

    @Test
    void theDatabaseKeepsWhatWasSignedLatelyThoughTheRoleEndedLongAgo() {
        UUID request = ask(director).orThrow();
        fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
        assertRefused("the term is not over", () -> tombstone(request, administrator, true));
    }

    @Test
    void theServerMayStillDeleteNothingSigned() {
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> transaction.execute(
                                status -> jdbc.sql("delete from signed_sheet").update())))
                .rootCause()
                .hasMessageContaining("permission denied");
    }

    @Test
    void thePagesLeadThroughBothSteps() throws Exception {
        String form = "/removals/trainees/" + theatre.trainee().personId();
        assertThat(page(director, "/removals")).contains("Fenna Hallinor: 1 signed record", form);
        mvc.perform(post(form)
                        .param("reason", "")
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
        mvc.perform(post(form)
                        .param("reason", WHY)
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(director))
                        .with(csrf()))
                .andExpect(redirectedUrl("/removals"));
        assertThat(page(director, "/removals")).contains("You asked. Somebody else confirms.");
        String list = page(administrator, "/removals");
        int at = list.indexOf("href=\"/removals/", list.indexOf("waiting-title")) + 6;
        String confirm = list.substring(at, list.indexOf('"', at));
        assertThat(page(administrator, confirm)).contains(WHY, "gone for good");
        mvc.perform(post(confirm)
                        .param("password", TestOrganisations.PASSWORD)
                        .with(LogIn.as(administrator))
                        .with(csrf()))
                .andExpect(redirectedUrl("/removals"));
        assertThat(page(director, "/removals"))
                .contains("asked by Corisande Delmarr, confirmed by Pell Ormandine", "Nothing waits.");
    }

    private static void assertRefused(String message, Runnable removal) {
        assertThatThrownBy(removal::run).rootCause().hasMessageContaining(message);
    }

    /** A tombstone as only a faulty server would write it. */
    private void tombstone(UUID request, SignedIn by, boolean whole) {
        theatre.organisation()
                .in(() -> transaction.execute(status -> {
                    UUID id = UUID.randomUUID();
                    jdbc.sql("""
                    insert into record_removal (
                        tenant_id, id, request_id, asked_name, removed_by, removed_name, removed_role, removed_at,
                        record_years, records)
                    values (:tenant, :id, :request, 'A', :by, 'B', 'DIRECTOR', now(), 6, 1)
                    """)
                            .param("tenant", theatre.organisation().tenant())
                            .param("id", id)
                            .param("request", request)
                            .param("by", by.personId())
                            .update();
                    if (whole) {
                        jdbc.sql("""
                        insert into removed_record (tenant_id, removal_id, kind, record_id, content_hash)
                        select :tenant, :id, e.kind, e.record_id, e.content_hash
                        from evidence_of_trainee(:programme, :trainee) e
                        """)
                                .param("tenant", theatre.organisation().tenant())
                                .param("id", id)
                                .param("programme", programme())
                                .param("trainee", theatre.trainee().personId())
                                .update();
                    }
                    return jdbc.sql("select remove_records(:id)")
                            .param("id", id)
                            .query(Integer.class)
                            .single();
                }));
    }

    private void remove(UUID tombstone) {
        theatre.organisation()
                .in(() -> transaction.execute(status -> jdbc.sql("select remove_records(:id)")
                        .param("id", tombstone)
                        .query(Integer.class)
                        .single()));
    }

    private Theatre newTrainee() {
        SignedIn trainee = theatre.organisation().join("Imre Calloway", Role.TRAINEE);
        return new Theatre(theatre.organisation(), theatre.supervisor(), trainee);
    }

    private void trainingEnded(Instant at) {
        theatre.organisation()
                .in(() -> transaction.execute(status -> jdbc.sql("""
                                update programme_role set ended_at = :at
                                where person_id = :person and role = 'TRAINEE'
                                """)
                        .param("at", at.atOffset(ZoneOffset.UTC))
                        .param("person", theatre.trainee().personId())
                        .update()));
    }

    private Attempt<UUID> ask(SignedIn who) {
        return theatre.organisation()
                .in(() -> removals.ask(who, programme(), theatre.trainee().personId(), WHY, PASSWORD));
    }

    private Attempt<UUID> confirm(SignedIn who, UUID request) {
        return confirm(who, request, PASSWORD);
    }

    private Attempt<UUID> confirm(SignedIn who, UUID request, Credential credential) {
        return theatre.organisation().in(() -> removals.confirm(who, request, credential));
    }

    private Credential answer(SignedIn who, RemovalIntent intent) {
        return new Credential.PasskeyAssertion(
                SoftwarePasskey.of(who.accountId(), passkeys).answer(Base64Url.text(intent.challenge())));
    }

    private UUID programme() {
        return theatre.organisation().programme().id();
    }

    private static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private String page(SignedIn who, String path) throws Exception {
        return mvc.perform(get(path).with(LogIn.as(who)))
                .andExpect(status().isOk())
                .andReturn()
                .getResponse()
                .getContentAsString();
    }

    private long rows(String table) {
        return Long.parseLong(text("select count(*)::text from " + table));
    }

    private String text(String sql) {
        return theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql(sql).query(String.class).single()));
    }

    private CheckResult check() throws Exception {
        return attacked("select 1");
    }

    /** What the verifier says after a superuser did this, which is undone. */
    private CheckResult attacked(String sql) throws Exception {
        try (Connection connection = TestDatabase.superuser()) {
            connection.setAutoCommit(false);
            try (var statement = connection.createStatement()) {
                statement.execute("set local session_replication_role = replica");
                statement.execute(sql);
                return new DatabaseCheck(connection, theatre.organisation().tenant())
                        .run(Known.NOTHING, ServiceLoader.load(RecordCheck.class), leaves -> {});
            } finally {
                connection.rollback();
            }
        }
    }
}
