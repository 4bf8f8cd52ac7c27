package org.scrubline.archive;

import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/**
 * The rows about a person. A table that names people is in a part here or among {@link #LEFT_OUT} with its reason;
 * {@code ArchiveTablesTests} holds that against the live catalogue.
 */
@Repository
class ArchiveQueries {

    private static final String TENANT = "tenant_id";

    /** Sheets about the person, and those they score. */
    private static final String MY_SHEETS =
            "select id from score_sheet where tenant_id = :tenant and :person in (trainee_id, scorer_id)";

    private static final String ABOUT_MY_SHEETS = ":person = signer_id or sheet_id in (" + MY_SHEETS + ")";
    private static final String ABOUT_MY_RECORDS = """
            :person = signer_id or signed_sheet_id in (
                select id
                from signed_sheet
                where tenant_id = :tenant
                  and :person in (trainee_id, signer_id))
            """;

    static final List<Part> PARTS = List.of(
            new Part("person", Set.of("person", "login_account"), """
                    select p.id, p.printed_name, p.active, p.created_at, a.username
                    from person p
                    left join login_account a on a.id = p.account_id
                    where p.tenant_id = :tenant
                      and p.id = :person
                    """),
            new Part("roles", Set.of("programme_role"), """
                    select r.role, g.name as programme, r.granted_at, r.ended_at
                    from programme_role r
                    join programme g on g.tenant_id = r.tenant_id and g.id = r.programme_id
                    where r.tenant_id = :tenant
                      and r.person_id = :person
                    order by r.granted_at
                    """),
            Part.of("answers", "own_characteristic", "person_id = :person"),
            Part.of("earlier-cases", "prior_experience", "trainee_id = :person"),
            Part.of("declared-conflicts", "declared_conflict", "person_id = :person"),
            Part.of("introductions-to-scoring", "scorer_introduction", "person_id = :person"),
            new Part("cases", Set.of("surgical_case", "case_trainee", "case_complexity"), """
                    select c.reference, c.procedure_code, c.converted_to, c.eye, c.state, s.name as site,
                        g.name as programme, c.planned_on, c.ended_at, c.ended_zone, c.band,
                        (select string_agg(f.factor_code, ' ' order by f.factor_code)
                         from case_complexity f
                         where f.tenant_id = c.tenant_id
                           and f.case_id = c.id) as complexity,
                        c.planned_supervision, t.claimed_part, t.goal, c.abandoned_reason, c.logged_at, c.id
                    from case_trainee t
                    join surgical_case c on c.tenant_id = t.tenant_id and c.id = t.case_id
                    join site s on s.tenant_id = c.tenant_id and s.id = c.site_id
                    join programme g on g.tenant_id = c.tenant_id and g.id = c.programme_id
                    where t.tenant_id = :tenant
                      and t.trainee_id = :person
                    order by c.logged_at, c.id
                    """),
            Part.of("self-scores", "self_score", "trainee_id = :person"),
            Part.of("notes-for-oneself", "reflection", "author_id = :person"),
            Part.of("sent-from-devices", "case_submission", "sent_by = :person"),
            Part.of("open-sheets", "score_sheet", "scorer_id = :person and state = 'OPEN'"),
            Part.of("signed-sheets", "signed_sheet", ":person in (trainee_id, signer_id)"),
            Part.of("remarks", "sheet_remark", "author_id = :person or sheet_id in (" + MY_SHEETS + ")"),
            Part.of("countersignatures", "countersignature", ABOUT_MY_RECORDS),
            Part.of("acknowledgements", "acknowledgement", ABOUT_MY_RECORDS),
            Part.of("late-releases", "late_release", "released_by = :person or sheet_id in (" + MY_SHEETS + ")"),
            Part.of("new-versions-begun", "version_draft", "editor_id = :person"),
            Part.of("delegates", "version_delegate", "delegate_id = :person or " + ABOUT_MY_SHEETS),
            Part.of("voids-asked", "void_request", ABOUT_MY_SHEETS),
            Part.of("voids-decided", "void_decision", ABOUT_MY_SHEETS),
            Part.of("contests", "contest", ABOUT_MY_SHEETS),
            Part.of("contest-steps", "contest_step", """
                    :person in (signer_id, reviewer_id) or contest_id in (
                        select id
                        from contest
                        where tenant_id = :tenant
                          and sheet_id in (%s))
                    """.formatted(MY_SHEETS)),
            Part.of("outcomes", "outcome_entry", """
                    case_id in (
                        select case_id
                        from case_trainee
                        where tenant_id = :tenant
                          and trainee_id = :person)
                    """),
            Part.of("placements", "placement", "trainee_id = :person"),
            Part.of("training-record", "training_entry", "trainee_id = :person"),
            Part.of("training-answers", "training_answer", """
                    answered_by = :person or entry_id in (
                        select id
                        from training_entry
                        where tenant_id = :tenant
                          and trainee_id = :person)
                    """),
            Part.of("reference-scores", "reference_scoring", "scorer_id = :person"),
            Part.of("reference-steps", "reference_step", """
                    reference_scoring_id in (
                        select id
                        from reference_scoring
                        where tenant_id = :tenant
                          and scorer_id = :person)
                    """),
            Part.of("signing-statements", "signing_statement", "person_id = :person"),
            Part.of("supervision-levels", "entitlement_change", "trainee_id = :person"),
            Part.of("committee-decisions", "committee_decision", ":person in (trainee_id, signer_id)"),
            Part.of("committee-acts", "committee_act", ":person in (trainee_id, signer_id)"),
            Part.of("committee-drafts", "decision_draft", "author_id = :person"),
            Part.of("committee-meetings", "meeting_member", "person_id = :person"),
            Part.of("appeal-panels", "appeal_panel", "person_id = :person"),
            Part.of("evidence-packs", "evidence_pack", """
                    trainee_id = :person and id in (
                        select pack_id
                        from committee_decision
                        where tenant_id = :tenant
                          and trainee_id = :person)
                    """),
            Part.of("visits", "visitor_access", "visitor_id = :person"),
            Part.of("shown-to-visitors", "visitor_record", "trainee_id = :person"),
            Part.of("holds", "record_hold", "trainee_id = :person"),
            Part.of("removals-asked", "removal_request", "trainee_id = :person"),
            Part.of("sheets-removed", "removed_sheet", ":person in (trainee_id, scorer_id)"),
            Part.of("reminders", "notice", "person_id = :person"),
            Part.of("reminder-settings", "notice_setting", "person_id = :person"),
            Part.of("from-a-directory", "provisioned_person", "person_id = :person"),
            Part.of("rubric-drafts", "rubric_draft", ":person = any(authors)"),
            Part.of("rubric-reviews", "rubric_review", "reviewer_id = :person"),
            new Part("expert-answers", Set.of("rubric_expert", "rubric_rating"), """
                    select o.content_hash, o.closes_at, r.rated_at, s.step_code, s.relevance, s.remark
                    from rubric_expert e
                    join rubric_round o on o.tenant_id = e.tenant_id and o.id = e.round_id
                    left join rubric_rating r on r.tenant_id = e.tenant_id and r.round_id = e.round_id
                        and r.expert_id = e.person_id
                    left join rubric_step_rating s on s.tenant_id = r.tenant_id and s.rating_id = r.id
                    where e.tenant_id = :tenant
                      and e.person_id = :person
                    order by o.opened_at, s.step_code
                    """),
            Part.of("lost-second-factors", "factor_clearing", "person_id = :person"),
            new Part("addresses", Set.of("login_address"), """
                    select address, confirmed, set_at
                    from login_address
                    where account_id = :account
                    order by set_at
                    """),
            new Part("passkeys", Set.of("passkey"), """
                    select label, created_at, last_used_at
                    from passkey
                    where account_id = :account
                    order by created_at
                    """),
            new Part("authenticator-app", Set.of("code_app"), """
                    select created_at, last_used_at
                    from code_app
                    where account_id = :account
                    """),
            new Part("recovery-codes", Set.of("recovery_code"), """
                    select created_at, used_at
                    from recovery_code
                    where account_id = :account
                    order by created_at
                    """),
            new Part("devices", Set.of("login_device"), """
                    select device, first_at, last_at, last_address, known
                    from login_device
                    where account_id = :account
                    order by first_at
                    """),
            new Part("log-in-elsewhere", Set.of("provider_subject"), """
                    select issuer, subject, linked_at
                    from provider_subject
                    where account_id = :account
                    order by linked_at
                    """),
            new Part("what-was-done", Set.of("audit_entry"), """
                    select sequence, entered_at, action, record_kind, record_label, reason, value_before, value_after,
                        actor_id = :person as done_by_you
                    from audit_entry
                    where tenant_id = :tenant
                      and :person in (actor_id, about_id)
                    order by sequence
                    """));

    static final Map<String, String> LEFT_OUT = Map.ofEntries(
            Map.entry("account_organisation", "says no more than that the person is in this organisation"),
            Map.entry("login_invitation", "a hash of a code and its dates; the account it opened is there"),
            Map.entry("login_link", "hashes of codes that live for minutes"),
            Map.entry("cleared_factor", "when a factor was taken away; the request and its dates are there"),
            Map.entry("rubric_version", "the text of the programme; that somebody published it is in what was done"),
            Map.entry("rubric_effect", "a rule of the organisation; that somebody decided it is in what was done"),
            Map.entry("rubric_round", "a question of the organisation; that somebody asked it is in what was done"),
            Map.entry("sheet_assignment", "hand-overs of sheets; they are in what was done"),
            Map.entry("sheet_step", "levels of sheets not signed yet, which bind nobody"),
            Map.entry("sheet_measure", "measures of sheets not signed yet"),
            Map.entry("sheet_event", "events of sheets not signed yet"),
            Map.entry("sheet_tap", "taps of sheets not signed yet, there so that none counts twice"),
            Map.entry("retention_setting", "a rule of the programme; that somebody set it is in what was done"),
            Map.entry("programme_setting", "a rule of the programme; that somebody set it is in what was done"),
            Map.entry("exposure_plan", "the programme's; that somebody planned it is in what was done"),
            Map.entry("reference_case", "the programme's; that somebody added or closed it is in what was done"),
            Map.entry("record_removal", "which records were removed; that somebody did it is in what was done"),
            Map.entry("hand_off", "lives for minutes"),
            Map.entry("meeting", "the programme's; who was called to one is there"),
            Map.entry("meeting_trainee", "a plan; what was decided is there"),
            Map.entry("meeting_conflict", "what members said of themselves; it is in what was done"));

    private final JdbcClient jdbc;

    ArchiveQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    int count(Part part, SignedIn who) {
        return ask("select count(*) from (" + part.rows() + ") kept", part, who)
                .query(Integer.class)
                .single();
    }

    /** The names of the columns, then every row as text; nothing that is not there. */
    void each(Part part, SignedIn who, Consumer<List<String>> lines) {
        boolean[] begun = {false};
        ask(part.rows(), part, who).query(row -> {
            if (!begun[0]) {
                lines.accept(columns(row));
                begun[0] = true;
            }
            lines.accept(cells(row));
        });
    }

    private StatementSpec ask(String sql, Part part, SignedIn who) {
        StatementSpec statement = jdbc.sql(sql);
        if (part.rows().contains(":tenant")) {
            statement = statement.param("tenant", TenantScope.require()).param("person", who.personId());
        }
        return part.rows().contains(":account") ? statement.param("account", who.accountId()) : statement;
    }

    private static List<String> columns(ResultSet row) throws SQLException {
        ResultSetMetaData about = row.getMetaData();
        List<String> names = new ArrayList<>();
        for (int i = 1; i <= about.getColumnCount(); i++) {
            if (!about.getColumnLabel(i).equals(TENANT)) {
                names.add(about.getColumnLabel(i));
            }
        }
        return names;
    }

    private static List<String> cells(ResultSet row) throws SQLException {
        ResultSetMetaData about = row.getMetaData();
        List<String> cells = new ArrayList<>();
        for (int i = 1; i <= about.getColumnCount(); i++) {
            if (!about.getColumnLabel(i).equals(TENANT)) {
                String text = row.getString(i);
                cells.add(text == null ? "" : text);
            }
        }
        return cells;
    }
}
