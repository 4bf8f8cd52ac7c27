package org.scrubline.ledger.check;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.note.KeyFile;
import org.scrubline.ledger.note.SigningKey;
import org.scrubline.ledger.note.VerifierKey;

/** Checks the evidence of one organisation in the database. */
public final class DatabaseCheck {

    private static final int BATCH = 200;

    private final Connection connection;
    private final UUID tenant;

    /**
     * @param connection in a transaction of its own, best a read-only one at isolation {@code repeatable read}, so that
     *     everything read is of one moment
     */
    public DatabaseCheck(Connection connection, UUID tenant) {
        this.connection = connection;
        this.tenant = tenant;
    }

    /** Every organisation this connection can name. */
    public static List<UUID> organisations(Connection connection) throws SQLException {
        return EvidenceQueries.organisations(connection);
    }

    /**
     * The key in a file under each name the ledger gave its keys: what a checkpoint of this installation is signed with
     * now, known without trusting the database.
     */
    public List<VerifierKey> keysOf(Path keyFile) throws SQLException, IOException {
        SigningKey key = KeyFile.read(keyFile);
        return new EvidenceQueries(connection, tenant)
                .keys().stream()
                        .map(text -> text.replaceFirst("\\+.*", ""))
                        .distinct()
                        .map(key::verifier)
                        .toList();
    }

    /**
     * Reads everything and computes it anew.
     *
     * @param done is told now and then how many leaves are done
     */
    public CheckResult run(Known known, Iterable<RecordCheck> checks, LongConsumer done) throws SQLException {
        EvidenceQueries queries = new EvidenceQueries(connection, tenant);
        LedgerCheck check = new LedgerCheck(tenant, known);
        Looks looks = new Looks(checks);
        try (NodeCursor nodes = queries.nodes()) {
            SubtreeCheck subtrees = new SubtreeCheck(nodes, check.findings());
            queries.leaves(BATCH, batch -> {
                List<PreparedLeaf> prepared = batch.parallelStream()
                        .map(leaf -> PreparedLeaf.of(leaf, looks))
                        .toList();
                prepared.forEach(leaf -> check.leaf(leaf, subtrees));
                done.accept(batch.get(batch.size() - 1).index() + 1);
            });
            subtrees.finish();
        }
        for (LeafKind kind : LeafKind.values()) {
            for (LeafKind.Rows table : kind.rows()) {
                queries.withoutLeaf(kind, table)
                        .forEach(record -> check.findings().add(Problem.NO_LEAF, kind.name(), record, table.table()));
            }
        }
        return check.finish(check.seals().run(queries));
    }
}
