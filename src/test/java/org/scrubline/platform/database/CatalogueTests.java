package org.scrubline.platform.database;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.scrubline.support.ScrublineTest;

/** Reads the live catalogue: every table stands behind the wall or on the list below, with its reason. */
@ScrublineTest
class CatalogueTests {

    /** Tables that belong to no single organisation, and why. */
    private static final Map<String, String> GLOBAL = Map.ofEntries(
            Map.entry("login_account", "one account may enter several organisations"),
            Map.entry("account_organisation", "read before an organisation is chosen"),
            Map.entry("login_invitation", "opened before log-in, by its code alone"),
            Map.entry("login_address", "belongs to the log-in account, asked for before an organisation is known"),
            Map.entry("login_link", "opened before log-in, by its code alone"),
            Map.entry("allowance", "some things are counted before anyone is known"),
            Map.entry("login_throttle", "guessing is slowed before anyone is known"),
            Map.entry("login_refusal", "a refused log-in belongs to nobody yet"),
            Map.entry("passkey", "a credential of the log-in account, asked for before an organisation is known"),
            Map.entry("provision_token", "says which organisation a request of a directory is for"),
            Map.entry("provider_subject", "how an account is entered, asked for before an organisation is known"),
            Map.entry("cleared_factor", "belongs to the log-in account, like its second factor"),
            Map.entry("code_app", "a credential of the log-in account, like its passkeys"),
            Map.entry("login_device", "belongs to the log-in account, like its sessions"),
            Map.entry("recovery_code", "a credential of the log-in account, like its passkeys"),
            Map.entry("setup_token", "exists before the first organisation"),
            Map.entry("scheduled_tasks", "jobs start before an organisation is entered; a run enters each in turn"),
            Map.entry("spring_session", "read before anyone is known"),
            Map.entry("spring_session_attributes", "read before anyone is known"),
            Map.entry("flyway_schema_history", "history of the schema itself"));

    /** Tables the server may only add to and read. */
    private static final Set<String> WRITE_ONCE = Set.of(
            "rubric_version",
            "rubric_step",
            "rubric_review",
            "rubric_effect",
            "rubric_round",
            "rubric_expert",
            "rubric_rating",
            "rubric_step_rating",
            "signed_sheet",
            "signed_step",
            "signed_event",
            "sheet_remark",
            "audit_entry",
            "audit_seal",
            "removal_request",
            "record_removal",
            "removed_record",
            "visitor_record",
            "retention_setting",
            "removed_sheet",
            "version_delegate",
            "void_request",
            "void_decision",
            "contest",
            "contest_step",
            "signature_assertion",
            "countersign_reason",
            "countersignature",
            "acknowledgement",
            "late_release",
            "signing_statement",
            "programme_setting",
            "scorer_introduction",
            "exposure_plan",
            "training_entry",
            "training_answer",
            "reference_scoring",
            "reference_step",
            "population_fit",
            "entitlement_change",
            "outcome_entry",
            "evidence_pack",
            "committee_decision",
            "committee_act",
            "appeal_panel",
            "ledger_leaf",
            "ledger_node",
            "ledger_key",
            "ledger_checkpoint");

    @Test
    void everyTableStandsBehindTheWallOrOnTheList() throws Exception {
        List<String> open = column("""
                select c.relname
                from pg_class c
                where c.relnamespace = 'public'::regnamespace
                  and c.relkind in ('r', 'p')
                  and not (c.relrowsecurity and c.relforcerowsecurity
                           and exists (select 1 from pg_policy p
                                       where p.polrelid = c.oid and p.polqual is not null and p.polwithcheck is not null))
                """);
        assertThat(open).containsExactlyInAnyOrderElementsOf(GLOBAL.keySet());
    }

    @Test
    void thePolicyIsTheSameEverywhere() throws Exception {
        assertThat(column("select distinct pg_get_expr(polqual, polrelid) from pg_policy"))
                .singleElement()
                .asString()
                .contains("NULLIF(current_setting('scrubline.tenant'");
        assertThat(column("""
                select polrelid::regclass::text
                from pg_policy
                where pg_get_expr(polqual, polrelid) <> pg_get_expr(polwithcheck, polrelid)
                   or polcmd <> '*'
                """)).isEmpty();
    }

    @Test
    void everyPrimaryAndUniqueKeyLeadsWithTheOrganisation() throws Exception {
        List<String> keys = column("""
                select c.relname || '.' || i.relname
                from pg_index x
                join pg_class c on c.oid = x.indrelid
                join pg_class i on i.oid = x.indexrelid
                left join pg_attribute a on a.attrelid = c.oid and a.attnum = x.indkey[0]
                where c.relnamespace = 'public'::regnamespace
                  and x.indisunique
                  and a.attname is distinct from 'tenant_id'
                """);
        assertThat(keys).allSatisfy(key -> assertThat(GLOBAL).containsKey(key.substring(0, key.indexOf('.'))));
        assertThat(keys).as("the global tables do have keys").isNotEmpty();
    }

    @Test
    void everyForeignKeyBetweenWalledTablesLeadsWithTheOrganisation() throws Exception {
        List<String> keys = column("""
                select k.conrelid::regclass || '.' || k.conname || ' -> ' || k.confrelid::regclass
                from pg_constraint k
                join pg_attribute a on a.attrelid = k.conrelid and a.attnum = k.conkey[1]
                join pg_attribute b on b.attrelid = k.confrelid and b.attnum = k.confkey[1]
                where k.contype = 'f'
                  and k.connamespace = 'public'::regnamespace
                  and (a.attname <> 'tenant_id' or b.attname <> 'tenant_id')
                """);
        assertThat(keys)
                .allSatisfy(key -> assertThat(GLOBAL)
                        .as("%s leads past the wall", key)
                        .containsKey(key.substring(key.lastIndexOf(' ') + 1)));
    }

    @Test
    void theServerOwnsNothingAndMayNotChangeWhatWasSignedOrPublished() throws Exception {
        assertThat(column("select relname from pg_class where relowner = 'scrubline_app'::regrole"))
                .isEmpty();
        for (String table : WRITE_ONCE) {
            assertThat(column("""
                    select privilege_type
                    from information_schema.table_privileges
                    where grantee = 'scrubline_app' and table_name = '%s'
                    """.formatted(table))).as(table).containsExactlyInAnyOrder("SELECT", "INSERT");
            assertThat(column("""
                    select column_name
                    from information_schema.column_privileges
                    where grantee = 'scrubline_app' and table_name = '%s' and privilege_type = 'UPDATE'
                    """.formatted(table))).as(table).isEmpty();
        }
    }

    @Test
    void nobodyMayTruncateOrReference() throws Exception {
        assertThat(column("""
                select table_name || ' ' || privilege_type
                from information_schema.table_privileges
                where grantee in ('scrubline_app', 'PUBLIC')
                  and table_schema = 'public'
                  and privilege_type in ('TRUNCATE', 'REFERENCES', 'TRIGGER')
                """)).isEmpty();
    }

    @Test
    void everyViewIsReadWithTheRightsOfTheReader() throws Exception {
        assertThat(column("""
                select relname
                from pg_class
                where relnamespace = 'public'::regnamespace
                  and relkind = 'v'
                  and not coalesce('security_invoker=true' = any (reloptions), false)
                """)).isEmpty();
    }

    private static List<String> column(String query) throws SQLException, IOException {
        try (Connection superuser = TestDatabase.superuser();
                Statement statement = superuser.createStatement();
                ResultSet rows = statement.executeQuery(query)) {
            List<String> values = new ArrayList<>();
            while (rows.next()) {
                values.add(rows.getString(1));
            }
            return values;
        }
    }
}
