package org.scrubline.ledger.check;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.ledger.note.SigningKeys;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/**
 * A superuser of the database against someone who keeps a checkpoint from before the attack and the verifier key. The
 * key that signs lies in a file, which a superuser of the database does not have.
 */
@ScrublineTest
class AttackTests {

    /** Tables the server may only add to that hold no evidence, and why. */
    private static final Map<String, String> NO_EVIDENCE = Map.of(
            "account_organisation",
                    "says who may enter which organisation, before one is chosen; no record of training",
            "flyway_schema_history", "the history of the schema, written by migrations",
            "outcome_entry",
                    "nobody signs what a clinic letter says; each entry’s hash stands in the audit trail, which is sealed");

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    Checkpoints checkpoints;

    Evidence evidence;
    UUID tenant;
    Known known;

    @BeforeEach
    void keepACheckpoint() {
        evidence = fixture.of(organisations);
        tenant = evidence.tenant();
        String note = evidence.theatre()
                .organisation()
                .in(() -> checkpoints.newest().orElseThrow().note());
        known = Known.read(List.of(evidence.theatre().organisation().in(checkpoints::verifierKey)), List.of(note));
    }

    @Test
    void untouchedEvidenceIsSound() throws Exception {
        CheckResult result = Attack.check(tenant, known, database -> {});
        assertThat(result.found()).isEmpty();
        assertThat(result.sound()).isTrue();
        assertThat(result.records()).isEqualTo(3);
        assertThat(result.checkpoints()).isEqualTo(2);
        assertThat(result.held()).isEqualTo(1);
        assertThat(result.keyGiven()).isTrue();
        assertThat(result.signedWith()).isEqualTo(known.keys().get(0).text());
        assertThat(Attack.check(tenant, Known.NOTHING, database -> {}).sound()).isTrue();
    }

    /** Tables on which the server's role may neither change nor remove anything, from the live catalogue. */
    private static List<String> evidenceTables() throws Exception {
        return Attack.catalogue("""
                select c.relname
                from pg_class c
                where c.relnamespace = 'public'::regnamespace
                  and c.relkind in ('r', 'p')
                  and not has_table_privilege('scrubline_app', c.oid, 'DELETE')
                  and not has_any_column_privilege('scrubline_app', c.oid, 'UPDATE')
                order by c.relname
                """);
    }

    @Test
    void everyTableTheServerMayOnlyAddToIsFixedByTheLedger() throws Exception {
        TreeSet<String> fixed = new TreeSet<>(List.of("ledger_leaf", "ledger_node", "audit_entry"));
        Arrays.stream(LeafKind.values()).flatMap(kind -> kind.rows().stream()).forEach(rows -> fixed.add(rows.table()));
        assertThat(evidenceTables().stream().filter(table -> !NO_EVIDENCE.containsKey(table)))
                .containsExactlyElementsOf(fixed);
        assertThat(evidenceTables()).containsAll(NO_EVIDENCE.keySet());
    }

    @Test
    void aChangeOfAnyColumnOfAnyEvidenceTableIsFound() throws Exception {
        List<String> missed = new ArrayList<>();
        List<String> tried = new ArrayList<>();
        for (String table : evidenceTables()) {
            if (!NO_EVIDENCE.containsKey(table)) {
                for (String column : columns(table)) {
                    String name = table + "." + column;
                    String found = changed(table, column);
                    tried.add(name + " -> " + found);
                    if (found.isEmpty()) {
                        missed.add(name);
                    }
                }
            }
        }
        System.out.println("Evidence columns changed one by one, and what the verifier says:");
        tried.forEach(line -> System.out.println("  " + line));
        assertThat(missed).isEmpty();
        assertThat(tried).hasSizeGreaterThan(80);
    }

    /** Name and type. */
    private static List<String> columns(String table) throws Exception {
        return Attack.catalogue("""
                select attname || ' ' || format_type(atttypid, null)
                from pg_attribute
                where attrelid = '%s'::regclass and attnum > 0 and not attisdropped
                order by attnum
                """.formatted(table));
    }

    /** What the verifier finds when one value of this column is another. */
    private String changed(String table, String nameAndType) throws Exception {
        String column = nameAndType.substring(0, nameAndType.indexOf(' '));
        String other = other(column, nameAndType.substring(nameAndType.indexOf(' ') + 1));
        CheckResult result = Attack.check(tenant, known, database -> {
            database.unfetter(table);
            int rows = database.run(
                    "update %1$s set %2$s = %3$s where ctid = (select ctid from %1$s where tenant_id = :tenant order by %2$s is null limit 1)"
                            .formatted(table, column, other));
            assertThat(rows)
                    .as("%s has no row to attack: add an example to EvidenceFixture", table)
                    .isEqualTo(1);
        });
        return Stream.concat(
                        result.found().stream().map(finding -> finding.problem().name()), Stream.of(""))
                .findFirst()
                .orElseThrow();
    }

    private static String other(String column, String type) {
        return switch (type) {
            case "text" -> "coalesce(" + column + ", '') || 'x'";
            case "uuid" -> "gen_random_uuid()";
            case "smallint", "integer", "bigint", "numeric" -> "coalesce(" + column + ", 0) + 1";
            case "boolean" -> "not coalesce(" + column + ", false)";
            case "timestamp with time zone" -> "coalesce(" + column + ", now()) + interval '1 millisecond'";
            case "date" -> "coalesce(" + column + ", current_date) + 1";
            case "bytea" -> "set_byte(" + column + ", 0, 255 - get_byte(" + column + ", 0))";
            case "jsonb" -> "'{\"other\": 1}'::jsonb";
            default -> throw new AssertionError("say how to change a column of type " + type);
        };
    }

    @Test
    void aRowRemovedFromAnyEvidenceTableIsFound() throws Exception {
        for (String table : evidenceTables()) {
            if (!NO_EVIDENCE.containsKey(table)) {
                assertThat(Attack.check(tenant, known, database -> {
                                    database.unfetter(table);
                                    assertThat(database.run(
                                                    "delete from %1$s where ctid = (select ctid from %1$s where tenant_id = :tenant limit 1)"
                                                            .formatted(table)))
                                            .isEqualTo(1);
                                })
                                .sound())
                        .as(table)
                        .isFalse();
            }
        }
    }

    @Test
    void aWholeRecordIsMissedWhenRemovedWithItsLeafAndEveryTrace() throws Exception {
        assertFound(Problem.HELD_ROOT, database -> {
            UUID gone = evidence.signed().get(0).id();
            for (String table : List.of("signed_step", "signed_event")) {
                database.run("delete from " + table + " where signed_sheet_id = '" + gone + "'");
            }
            database.run("delete from signed_sheet where id = '" + gone + "'");
            closeUp(database, index(database, gone));
            new Forger(database, SigningKeys.fresh()).rewrite();
        });
    }

    @Test
    void aCopyOfARecordUnderAnotherIdIsFound() throws Exception {
        assertFound(Problem.NO_LEAF, database -> database.run("""
                insert into sheet_remark
                select tenant_id, gen_random_uuid(), sheet_id, author_id, body, written_at
                from sheet_remark
                where tenant_id = :tenant
                """));
    }

    @Test
    void aRecordSlippedIntoTheMiddleIsFound() throws Exception {
        assertFound(Problem.HELD_ROOT, database -> {
            UUID slipped = UUID.randomUUID();
            database.unfetter("ledger_leaf");
            database.run(
                    "insert into sheet_remark select tenant_id, '" + slipped
                            + "', sheet_id, author_id, 'All was well.', written_at from sheet_remark where tenant_id = :tenant");
            database.run(
                    "update ledger_leaf set leaf_index = leaf_index + 1 where tenant_id = :tenant and leaf_index >= 2");
            database.run("insert into ledger_leaf select tenant_id, 2, kind, '" + slipped
                    + "', replace(entry, record_id::text, '" + slipped
                    + "'), leaf_hash from ledger_leaf where tenant_id = :tenant and kind = 'REMARK'");
            new Forger(database, SigningKeys.fresh()).rewrite();
        });
    }

    @Test
    void twoLeavesThatChangePlacesAreFound() throws Exception {
        assertFound(Problem.HELD_ROOT, database -> {
            database.unfetter("ledger_leaf");
            database.run(
                    "update ledger_leaf set leaf_index = 3 - leaf_index where tenant_id = :tenant and leaf_index in (1, 2)");
            new Forger(database, null).rewrite();
        });
        assertFound(Problem.LEAF_HASH, database -> {
            database.unfetter("ledger_leaf");
            database.run("""
                    update ledger_leaf l
                    set leaf_hash = o.leaf_hash
                    from ledger_leaf o
                    where l.tenant_id = :tenant and o.tenant_id = l.tenant_id
                      and l.leaf_index in (1, 2) and o.leaf_index = 3 - l.leaf_index
                    """);
        });
    }

    @Test
    void signersThatChangePlacesAreFound() throws Exception {
        UUID other = UUID.randomUUID();
        assertFound(Problem.ROWS_CHANGED, database -> database.run("""
                update signed_sheet
                set signer_id = '%s', signer_name = 'Another Name'
                where tenant_id = :tenant
                """.formatted(other)));
        // Even with the ledger rewritten by someone who has the key, the signed text names the signer.
        assertFound(Problem.CONTRADICTION, database -> {
            database.run("update signed_sheet set signer_id = '" + other + "' where tenant_id = :tenant");
            new Forger(database, null).rewrite();
        });
    }

    /** With the whole ledger recorded anew by someone who has the key, the passkey's own signature still says so. */
    @Test
    void aPasskeysSignatureThatIsGoneExchangedOrMovedIsFoundThoughTheLedgerWasRewritten() throws Exception {
        assertFound(Problem.ASSERTION_MISSING, database -> {
            long index = index(
                    database,
                    UUID.fromString(database.column("select id from signature_assertion where tenant_id = :tenant")
                            .get(0)));
            database.run("delete from signature_assertion where tenant_id = :tenant");
            closeUp(database, index);
            new Forger(database, null).rewrite();
        });
        assertFound(Problem.ASSERTION_EXCHANGED, database -> {
            database.run("update signature_assertion set origin = origin || 'x' where tenant_id = :tenant");
            new Forger(database, null).rewrite();
        });
        assertFound(Problem.ASSERTION_UNNAMED, database -> {
            database.run("""
                    update signature_assertion set record_kind = 'SIGNATURE', record_id = '%s' where tenant_id = :tenant
                    """.formatted(evidence.signed().get(0).id()));
            new Forger(database, null).rewrite();
        });
    }

    @Test
    void wordsReplacedUnderAPasskeysSignatureAreFoundThoughTheLedgerWasRewritten() throws Exception {
        assertFound(Problem.ASSERTION_INVALID, database -> {
            database.run("""
                    update acknowledgement
                    set content = replace(content, 'Thank you.', 'All agreed.'),
                        content_hash = encode(sha256(convert_to(replace(content, 'Thank you.', 'All agreed.'), 'UTF8')), 'hex'),
                        words = 'All agreed.'
                    where tenant_id = :tenant
                    """);
            new Forger(database, null).rewrite();
        });
    }

    @Test
    void anEntrySlippedIntoTheSealedAuditTrailOrTakenOutOfItIsFound() throws Exception {
        String columns = String.join(", ", Attack.catalogue("""
                select attname
                from pg_attribute
                where attrelid = 'audit_entry'::regclass and attnum > 0 and attname not in ('sequence', 'tenant_id')
                """));
        assertFound(Problem.SEAL_BROKEN, database -> {
            database.unfetter("audit_entry");
            database.run("""
                    insert into audit_entry (tenant_id, sequence, %1$s)
                    select tenant_id, sequence, %1$s
                    from audit_entry
                    where tenant_id = :tenant
                    order by sequence
                    limit 1
                    """.formatted(columns));
        });
        assertFound(Problem.SEAL_BROKEN, database -> database.run("""
                delete from audit_entry
                where tenant_id = :tenant
                  and sequence = (select max(last_sequence) from audit_seal where tenant_id = :tenant)
                """));
        assertFound(Problem.SEAL_PLACE, database -> {
            String first = database.column(
                            "select id from audit_seal where tenant_id = :tenant order by last_sequence limit 1")
                    .get(0);
            closeUp(database, index(database, UUID.fromString(first)));
            database.run("delete from audit_seal where id = '" + first + "'");
            new Forger(database, null).rewrite();
        });
    }

    @Test
    void whatWasWrittenAfterTheNewestSealIsNamedByItsNumber() throws Exception {
        CheckResult result = Attack.check(tenant, known, database -> {
            database.unfetter("audit_entry");
            database.run("""
                    update audit_entry set sequence = sequence + 1000000
                    where tenant_id = :tenant
                      and sequence = (select max(last_sequence) from audit_seal where tenant_id = :tenant)
                    """);
        });
        assertThat(result.found()).extracting(Finding::problem).containsExactly(Problem.SEAL_BROKEN);
        assertThat(result.unsealed()).isEqualTo(1);
        assertThat(Attack.check(tenant, known, database -> {}).unsealed()).isZero();
    }

    @Test
    void aSignatureCopiedToAnotherRecordIsFound() throws Exception {
        SignedSheet from = evidence.signed().get(0);
        SignedSheet to = evidence.signed().get(1);
        String copy = """
                update signed_sheet t
                set content = f.content, content_hash = f.content_hash, signer_id = f.signer_id,
                    signer_name = f.signer_name, signer_role = f.signer_role, meaning = f.meaning,
                    signed_at = f.signed_at, signed_zone = f.signed_zone
                from signed_sheet f
                where f.id = '%s' and t.id = '%s'
                """.formatted(from.id(), to.id());
        assertFound(Problem.ROWS_CHANGED, database -> database.run(copy));
        assertFound(Problem.CONTRADICTION, database -> {
            database.run(copy);
            new Forger(database, null).rewrite();
        });
    }

    @Test
    void anOlderStatePutBackIsFound() throws Exception {
        CheckResult result = Attack.check(tenant, known, database -> {
            long keep = index(database, evidence.signed().get(1).id());
            removeFrom(database, keep);
        });
        assertThat(result.found()).extracting(Finding::problem).containsExactly(Problem.HELD_LONGER);
        assertThat(result.found().get(0).arguments().get(2)).isEqualTo(Long.toString(result.leaves() + 1));
        assertThat(Attack.check(tenant, Known.NOTHING, database -> {
                            removeFrom(
                                    database,
                                    index(database, evidence.signed().get(1).id()));
                        })
                        .sound())
                .as("without a checkpoint from outside an older state looks whole")
                .isTrue();
    }

    @Test
    void anOlderStatePutBackAndGrownBeyondTheCheckpointIsFound() throws Exception {
        assertFound(Problem.HELD_ROOT, database -> {
            database.unfetter("sheet_remark");
            long from = index(database, evidence.signed().get(1).id());
            removeFrom(database, from);
            for (long index = from; index < from + 6; index++) {
                UUID fresh = UUID.randomUUID();
                database.run(
                        "insert into sheet_remark select tenant_id, '" + fresh
                                + "', sheet_id, author_id, body, written_at from sheet_remark where tenant_id = :tenant limit 1");
                database.run(
                        "insert into ledger_leaf select tenant_id, " + index + ", kind, '" + fresh
                                + "', replace(entry, record_id::text, '" + fresh
                                + "'), leaf_hash from ledger_leaf where tenant_id = :tenant and kind = 'REMARK' order by leaf_index limit 1");
            }
            new Forger(database, null).rewrite();
        });
    }

    @Test
    void aLedgerRewrittenWithoutTheKeyIsFoundByItsOwnCheckpoints() throws Exception {
        CheckResult result = Attack.check(tenant, Known.NOTHING, database -> {
            reword(database);
            new Forger(database, null).rewrite();
        });
        assertThat(result.found())
                .extracting(Finding::problem)
                .containsExactly(Problem.CHECKPOINT_ROOT, Problem.CHECKPOINT_ROOT);
    }

    @Test
    void aLedgerRewrittenWithAForgedKeyIsFoundByWhoeverKeepsTheKeyOrACheckpoint() throws Exception {
        Attack.Damage damage = database -> {
            reword(database);
            new Forger(database, SigningKeys.fresh()).rewrite();
        };
        assertThat(Attack.check(tenant, Known.NOTHING, damage).sound())
                .as("it agrees with itself")
                .isTrue();
        assertThat(Attack.check(tenant, new Known(known.keys(), List.of()), damage)
                        .found())
                .extracting(Finding::problem)
                .contains(Problem.NEWEST_KEY);
        assertThat(Attack.check(tenant, new Known(List.of(), known.checkpoints()), damage)
                        .found())
                .extracting(Finding::problem)
                .contains(Problem.HELD_ROOT, Problem.HELD_SIGNATURE);
    }

    /** A better level in the signed text, with every hash in the record made to fit. */
    private void reword(Attack database) throws Exception {
        SignedSheet signed = evidence.signed().get(0);
        String content = Forger.reworded(signed.content(), "\"level\":4", "\"level\":5");
        assertThat(content).isNotEqualTo(signed.content());
        database.run("update signed_step set level = 5 where signed_sheet_id = '" + signed.id() + "' and level = 4");
        database.run("update signed_sheet set content = '" + content.replace("'", "''") + "', content_hash = '"
                + CanonicalJson.sha256(content) + "' where id = '" + signed.id() + "'");
    }

    private static long index(Attack database, UUID record) throws Exception {
        return Long.parseLong(database.column("select leaf_index from ledger_leaf where record_id = '" + record + "'")
                .get(0));
    }

    private static void closeUp(Attack database, long index) throws Exception {
        database.unfetter("ledger_leaf");
        database.run("delete from ledger_leaf where tenant_id = :tenant and leaf_index = " + index);
        database.run("update ledger_leaf set leaf_index = leaf_index - 1 where tenant_id = :tenant and leaf_index > "
                + index);
    }

    /** The state of a backup that was taken before this leaf. */
    private static void removeFrom(Attack database, long index) throws Exception {
        database.unfetter("ledger_leaf");
        for (LeafKind kind : LeafKind.values()) {
            for (LeafKind.Rows rows : kind.rows()) {
                database.run(
                        "delete from %s where tenant_id = :tenant and %s in (select record_id from ledger_leaf where tenant_id = :tenant and kind = '%s' and leaf_index >= %d)"
                                .formatted(rows.table(), rows.key(), kind.name(), index));
            }
        }
        database.run("delete from ledger_leaf where tenant_id = :tenant and leaf_index >= " + index);
        database.run("delete from ledger_node where tenant_id = :tenant and (position + 1) << level > " + index);
    }

    private void assertFound(Problem problem, Attack.Damage damage) throws Exception {
        CheckResult result = Attack.check(tenant, known, damage);
        assertThat(result.sound()).isFalse();
        assertThat(result.found()).extracting(Finding::problem).contains(problem);
    }
}
