package org.scrubline.ledger.check;

import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.RecordEvent;
import org.scrubline.signoff.RecordFixture;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.SigningStatements;
import org.scrubline.signoff.VersionFixture;
import org.scrubline.support.SoftwarePasskey;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/** One of everything that hangs on signed records and programmes: by the services where a test can, else as plain rows. */
@Component
class EvidenceExamples {

    private static final String DELEGATE = """
            insert into version_delegate (
                tenant_id, id, sheet_id, signed_sheet_id, delegate_id, content, content_hash,
                signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            values (:tenant, :id, :sheet, :record, :other, '{}', encode(sha256('{}'), 'hex'),
                :person, 'Ada Verney', 'DIRECTOR', 'signoff.meaning.delegate', now(), 'Europe/London')
            """;
    private static final String RELEASE = """
            insert into late_release (
                tenant_id, id, sheet_id, released_by, released_name, released_role, reason, released_at, released_zone)
            values (:tenant, :id, :sheet, :person, 'Ada Verney', 'DIRECTOR', 'on leave', now(), 'Europe/London')
            """;
    private static final String INTRODUCTION = """
            insert into scorer_introduction (
                tenant_id, id, programme_id, person_id, introduced_on, recorded_by, recorded_at)
            values (:tenant, :id, :programme, :person, current_date, :other, now())
            """;
    private static final String EXPOSURE_PLAN = """
            insert into exposure_plan (tenant_id, id, programme_id, family, cases, planned_by, planned_at)
            values (:tenant, :id, :programme, 'NEEDLING', '1,1,1,1,1,1,1,1,1,1,1,1', :person, now())
            """;
    private static final String TRAINING_ENTRY = """
            insert into training_entry (
                tenant_id, id, programme_id, trainee_id, kind, exercise, on_day, said,
                written_by, written_name, written_role, written_at)
            values (:tenant, :id, :programme, :trainee, 'WET_LAB', 'FLAP', current_date, 'Four times.',
                :trainee, 'Fenna Hallinor', 'TRAINEE', now())
            """;
    private static final String TRAINING_ANSWER = """
            insert into training_answer (
                tenant_id, id, entry_id, confirmed, said, answered_by, answered_name, answered_role, answered_at)
            select :tenant, :id, e.id, true, 'Seen.', :other, 'Ottilie Brannock', 'SUPERVISOR', now()
            from training_entry e
            where e.tenant_id = :tenant
            limit 1
            """;
    private static final List<String> REFERENCE = List.of("""
            insert into reference_case (
                tenant_id, id, programme_id, reference, title, rubric_version_id, band, film, closes_on, added_by, added_at)
            select :tenant, :id, :programme, 'REF-1', 'An even flap', v.id, 'B', 'Teaching drive', current_date, :person, now()
            from rubric_version v
            where v.tenant_id = :tenant
            limit 1
            """, """
            insert into reference_scoring (tenant_id, id, reference_case_id, scorer_id, scorer_name, scored_at)
            values (:tenant, :id, :id, :other, 'Ottilie Brannock', now())
            """, """
            insert into reference_step (tenant_id, reference_scoring_id, step_code, level)
            values (:tenant, :id, 'TF09', 3)
            """);
    private static final String RETENTION = """
            insert into retention_setting (
                tenant_id, id, programme_id, draft_days, record_years, export_days, set_by, set_at)
            values (:tenant, :id, :programme, 90, 6, 30, :person, now())
            """;
    private static final String ASKED = """
            insert into removal_request (
                tenant_id, id, programme_id, trainee_id, reason, asked_by, asked_name, asked_role, asked_at)
            values (:tenant, :id, :programme, :trainee, 'term over', :person, 'Ada Verney', 'DIRECTOR', now())
            """;
    private static final List<String> TOMBSTONE = List.of("""
            insert into record_removal (
                tenant_id, id, request_id, asked_name, removed_by, removed_name, removed_role, removed_at,
                record_years, records)
            select :tenant, :id, id, asked_name, :other, 'Ottilie Brannock', 'DIRECTOR', now(), 6, 1
            from removal_request
            """, """
            insert into removed_record (tenant_id, removal_id, kind, record_id, content_hash)
            values (:tenant, :id, 'SIGNATURE', gen_random_uuid(), repeat('0', 64))
            """);
    private static final String REMOVED = """
            insert into removed_sheet (
                tenant_id, id, case_id, trainee_id, scorer_id, opened_at, touched_at, told_at, removed_at, days)
            values (:tenant, :id, :case, :trainee, :person, now(), now(), now(), now(), 90)
            """;
    private static final String ACCESS = """
            insert into visitor_access (
                tenant_id, id, programme_id, visitor_id, purpose, starts_at, ends_at, given_by, given_at)
            values (:tenant, :id, :programme, :other, 'visit', now(), now() + interval '1 day', :person, now())
            """;
    private static final List<String> VISITED = List.of(ACCESS, """
            insert into visitor_record (tenant_id, id, access_id, trainee_id)
            values (:tenant, gen_random_uuid(), :id, :trainee)
            """, """
            insert into visitor_record (tenant_id, id, access_id, signed_sheet_id)
            values (:tenant, gen_random_uuid(), :id, :record)
            """);
    private static final List<String> PACK = List.of("""
            insert into meeting (tenant_id, id, programme_id, planned_at, chair_id, planned_by, created_at)
            values (:tenant, :id, :programme, now(), :person, :person, now())
            """, """
            insert into evidence_pack (
                tenant_id, id, meeting_id, trainee_id, cut_off, content, content_hash, frozen_by, frozen_at)
            values (:tenant, :id, :id, :trainee, now() - interval '1 minute', '{}',
                encode(sha256('{}'), 'hex'), :person, now())
            """);
    private static final String DECISION = """
            insert into committee_decision (
                tenant_id, id, programme_id, meeting_id, pack_id, trainee_id, family, bands, level, review_on,
                content, content_hash, signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            select :tenant, :id, :programme, p.meeting_id, p.id, :trainee, 'TRABECULECTOMY', 'AB', 'E2', current_date,
                '{"decided":{},"decidedHash":"' || encode(sha256('{}'), 'hex') || '"}',
                encode(sha256(convert_to('{"decided":{},"decidedHash":"' || encode(sha256('{}'), 'hex') || '"}',
                    'UTF8')), 'hex'),
                :person, 'Ada Verney', 'DIRECTOR', 'committee.meaning.decision', now(), 'Europe/London'
            from evidence_pack p
            where p.tenant_id = :tenant
            limit 1
            """;
    private static final List<String> ACT = List.of("""
            insert into committee_act (
                tenant_id, id, programme_id, trainee_id, decision_id, kind, content, content_hash,
                signer_id, signer_name, signer_role, meaning, signed_at, signed_zone)
            select :tenant, :id, :programme, :trainee, d.id, 'PANEL_NAMED',
                '{"persons":[{"id":"' || cast(:other as text) || '"}]}',
                encode(sha256(convert_to('{"persons":[{"id":"' || cast(:other as text) || '"}]}', 'UTF8')), 'hex'),
                :person, 'Ada Verney', 'DIRECTOR', 'committee.meaning.PANEL_NAMED', now(), 'Europe/London'
            from committee_decision d
            where d.tenant_id = :tenant
            limit 1
            """, """
            insert into appeal_panel (tenant_id, act_id, person_id)
            values (:tenant, :id, :other)
            """);
    private static final String ENTITLEMENT = """
            insert into entitlement_change (
                tenant_id, id, programme_id, trainee_id, ordinal, family, bands, kind, level, review_on,
                source_id, decided_by, decided_at)
            values (:tenant, :id, :programme, :trainee, 1, 'TRABECULECTOMY', 'AB', 'DECIDED', 'E2', current_date,
                :record, :person, now())
            """;
    private static final List<String> REVIEWED = List.of("""
            insert into rubric_draft (
                tenant_id, id, procedure_code, source, lock_no, authors, begun_by, begun_at, saved_by, saved_at)
            values (:tenant, :id, 'TRAB_FORNIX', 'steps', 1, array[cast(:person as uuid)], :person, now(), :person, now())
            """, """
            insert into rubric_review (
                tenant_id, id, draft_id, source_hash, content_hash, agrees, words, reviewer_id, reviewer_name, reviewed_at)
            values (:tenant, :id, :id, repeat('0', 64), repeat('1', 64), true, 'as agreed', :other, 'Ottilie Brannock', now())
            """);
    private static final String EFFECT = """
            insert into rubric_effect (
                tenant_id, id, procedure_code, rubric_version_id, review_id, effective_from, zone, reason,
                decided_by, decided_name, decided_at)
            select :tenant, :id, v.procedure_code, v.id, r.id, now(), 'Europe/London', 'clearer words',
                :person, 'Ada Verney', now()
            from rubric_version v, rubric_review r
            where v.tenant_id = :tenant
              and r.tenant_id = :tenant
            limit 1
            """;
    private static final List<String> ROUND = List.of("""
            insert into rubric_round (
                tenant_id, id, content, content_hash, keep_percent, opened_by, opened_name, opened_at, closes_at, zone)
            values (:tenant, :id, '{}', encode(sha256('{}'), 'hex'), 80, :person, 'Ada Verney', now(),
                now() + interval '7 days', 'Europe/London')
            """, """
            insert into rubric_expert (tenant_id, round_id, person_id)
            values (:tenant, :id, :other)
            """);
    private static final List<String> RATING = List.of("""
            insert into rubric_rating (tenant_id, id, round_id, expert_id, rated_at)
            select :tenant, :id, round_id, person_id, now()
            from rubric_expert
            where tenant_id = :tenant
            limit 1
            """, """
            insert into rubric_step_rating (tenant_id, rating_id, step_code, relevance, remark)
            values (:tenant, :id, 'TF01', 4, 'needed')
            """);

    private final RecordFixture records;
    private final VersionFixture versions;
    private final SigningStatements statements;
    private final Passkeys passkeys;
    private final Ledger ledger;
    private final JdbcClient jdbc;
    private final TransactionTemplate transaction;

    EvidenceExamples(
            RecordFixture records,
            VersionFixture versions,
            SigningStatements statements,
            Passkeys passkeys,
            Ledger ledger,
            JdbcClient jdbc,
            TransactionTemplate transaction) {
        this.records = records;
        this.versions = versions;
        this.statements = statements;
        this.passkeys = passkeys;
        this.ledger = ledger;
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    /** {@code contested} ends under review, {@code voided} void. */
    void of(Theatre theatre, SignedSheet contested, SignedSheet voided) {
        SignedIn director = theatre.organisation().join("Ada Verney", Role.DIRECTOR);
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", Role.SUPERVISOR);
        for (SignedIn who : List.of(colleague, theatre.trainee())) {
            theatre.organisation().in(() -> {
                statements.accept(who);
                return true;
            });
        }
        versions.set(theatre, SettingKey.LATE_AFTER, 48);
        versions.sign(theatre, colleague, RecordEvent.COUNTERSIGNED, contested, "")
                .orThrow();
        versions.sign(
                        theatre,
                        theatre.trainee(),
                        RecordEvent.ACKNOWLEDGED,
                        contested,
                        "Thank you.",
                        SoftwarePasskey.of(theatre.trainee().accountId(), passkeys))
                .orThrow();
        records.inReview(theatre, contested.id(), director, colleague);
        records.askVoid(theatre, theatre.supervisor(), voided.id()).orThrow();
        records.decideVoid(theatre, director, voided.id(), true).orThrow();
        Row row = new Row(theatre, contested, director, colleague);
        fixed(row, LeafKind.VERSION_DELEGATE, List.of(DELEGATE));
        fixed(row, LeafKind.LATE_RELEASE, List.of(RELEASE));
        fixed(row, LeafKind.INTRODUCTION, List.of(INTRODUCTION));
        fixed(row, LeafKind.EXPOSURE_PLAN, List.of(EXPOSURE_PLAN));
        fixed(row, LeafKind.TRAINING_ENTRY, List.of(TRAINING_ENTRY));
        fixed(row, LeafKind.TRAINING_ANSWER, List.of(TRAINING_ANSWER));
        fixed(row, LeafKind.REFERENCE_SCORING, REFERENCE);
        fixed(row, LeafKind.RETENTION_SETTING, List.of(RETENTION));
        fixed(row, LeafKind.SHEET_REMOVED, List.of(REMOVED));
        fixed(row, LeafKind.REMOVAL_REQUEST, List.of(ASKED));
        fixed(row, LeafKind.RECORD_REMOVAL, TOMBSTONE);
        fixed(row, LeafKind.VISIT, VISITED);
        fixed(row, LeafKind.EVIDENCE_PACK, PACK);
        fixed(row, LeafKind.DECISION, List.of(DECISION));
        fixed(row, LeafKind.COMMITTEE_ACT, ACT);
        fixed(row, LeafKind.ENTITLEMENT, List.of(ENTITLEMENT));
        fixed(row, LeafKind.RUBRIC_REVIEW, REVIEWED);
        fixed(row, LeafKind.RUBRIC_EFFECT, List.of(EFFECT));
        fixed(row, LeafKind.RUBRIC_ROUND, ROUND);
        fixed(row, LeafKind.RUBRIC_RATING, RATING);
    }

    private record Row(Theatre theatre, SignedSheet record, SignedIn person, SignedIn other) {}

    private void fixed(Row row, LeafKind kind, List<String> inserts) {
        UUID id = UUID.randomUUID();
        Map<String, Object> values = Map.of(
                "tenant", row.theatre().organisation().tenant(),
                "id", id,
                "programme", row.theatre().organisation().programme().id(),
                "sheet", row.record().sheetId(),
                "record", row.record().id(),
                "case", row.record().caseId(),
                "trainee", row.record().traineeId(),
                "person", row.person().personId(),
                "other", row.other().personId());
        row.theatre()
                .organisation()
                .in(() -> transaction.execute(status -> {
                    inserts.forEach(insert -> jdbc.sql(insert).params(values).update());
                    return ledger.append(kind, id);
                }));
    }
}
