package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.scrubline.platform.TenantScope;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.core.simple.JdbcClient.StatementSpec;
import org.springframework.stereotype.Repository;

/** What countersigning asks of the records. */
@Repository
class CountersignQueries {

    /** Whether the signed sheet {@code s} of a statement still needs its countersignature. */
    static final String AWAITED = """
            (exists (select 1
                     from countersign_reason why
                     where why.tenant_id = s.tenant_id
                       and why.signed_sheet_id = s.id)
             and not exists (select 1
                             from countersignature given
                             where given.tenant_id = s.tenant_id
                               and given.signed_sheet_id = s.id
                               and given.event = 'COUNTERSIGNED'))
            """;

    private static final String SIGNED_BEFORE = """
            select count(distinct sheet_id)
            from signed_sheet
            where tenant_id = :tenant
              and programme_id = :programme
              and signer_id = :signer
              and sheet_id <> :sheet
            """;
    private static final String INDEPENDENT_BEFORE = """
            select exists (
                select 1
                from signed_sheet
                where tenant_id = :tenant
                  and trainee_id = :trainee
                  and procedure_code = :procedure
                  and sheet_id <> :sheet
                  and verdict = 'INDEPENDENT'
                  and not exists (select 1
                                  from void_decision v
                                  where v.tenant_id = signed_sheet.tenant_id
                                    and v.sheet_id = signed_sheet.sheet_id
                                    and v.confirmed))
            """;
    /** Only the newest version of a sheet can be countersigned. */
    private static final String FOR_SUPERVISOR = """
            select s.id
            from signed_sheet s
            join programme_role r on r.tenant_id = s.tenant_id
                and r.programme_id = s.programme_id
                and r.person_id = :person
                and r.role = 'SUPERVISOR'
                and r.ended_at is null
            where s.tenant_id = :tenant
              and s.signer_id <> :person
              and s.trainee_id <> :person
              and %s
              and not exists (select 1
                              from declared_conflict c
                              where c.tenant_id = s.tenant_id
                                and c.ended_at is null
                                and ((c.person_id = :person and c.other_person_id in (s.signer_id, s.trainee_id))
                                     or (c.other_person_id = :person and c.person_id in (s.signer_id, s.trainee_id))))
              and not exists (select 1
                              from signed_sheet newer
                              where newer.tenant_id = s.tenant_id
                                and newer.sheet_id = s.sheet_id
                                and newer.version_no > s.version_no)
            order by s.signed_at, s.id
            """.formatted(AWAITED);

    private static final String OF_PROGRAMME = """
            select s.id
            from signed_sheet s
            where s.tenant_id = :tenant
              and s.programme_id = :programme
              and %s
              and not exists (select 1
                              from signed_sheet newer
                              where newer.tenant_id = s.tenant_id
                                and newer.sheet_id = s.sheet_id
                                and newer.version_no > s.version_no)
            order by s.signed_at, s.id
            """.formatted(AWAITED);
    private static final String REASONS = """
            select reason
            from countersign_reason
            where tenant_id = :tenant
              and signed_sheet_id = :record
            order by reason
            """;
    private static final String INSERT_REASON = """
            insert into countersign_reason (tenant_id, signed_sheet_id, reason)
            values (:tenant, :record, :reason)
            """;

    private final JdbcClient jdbc;

    CountersignQueries(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Sheets of the programme this person signed, this one left out. */
    int signedBefore(UUID programme, UUID signer, UUID sheet) {
        return sql(SIGNED_BEFORE)
                .param("programme", programme)
                .param("signer", signer)
                .param("sheet", sheet)
                .query(Integer.class)
                .single();
    }

    boolean independentBefore(UUID trainee, String procedure, UUID sheet) {
        return sql(INDEPENDENT_BEFORE)
                .param("trainee", trainee)
                .param("procedure", procedure)
                .param("sheet", sheet)
                .query(Boolean.class)
                .single();
    }

    /** Records this supervisor may countersign, longest waiting first. */
    List<UUID> forSupervisor(UUID person) {
        return sql(FOR_SUPERVISOR).param("person", person).query(UUID.class).list();
    }

    /** Records of a programme that wait, longest waiting first. */
    List<UUID> ofProgramme(UUID programme) {
        return sql(OF_PROGRAMME).param("programme", programme).query(UUID.class).list();
    }

    List<CountersignReason> reasons(UUID record) {
        return sql(REASONS)
                .param("record", record)
                .query((row, n) -> CountersignReason.valueOf(row.getString("reason")))
                .list();
    }

    void insert(UUID record, CountersignReason reason) {
        sql(INSERT_REASON)
                .param("record", record)
                .param("reason", reason.name())
                .update();
    }

    private StatementSpec sql(String text) {
        return jdbc.sql(text).param("tenant", TenantScope.require());
    }
}
