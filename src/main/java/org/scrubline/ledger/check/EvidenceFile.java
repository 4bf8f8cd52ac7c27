package org.scrubline.ledger.check;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.List;
import java.util.UUID;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.note.VerifierKey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** All evidence of one organisation as JSON lines: a head, each leaf with its rows, an end (docs/evidence-format.md). */
public final class EvidenceFile {

    /** Name and version of the form. */
    public static final String SCHEMA = "scrubline-evidence/1";

    private static final int BATCH = 200;

    private EvidenceFile() {}

    /** A file that is no evidence file at all. */
    public static class NotEvidence extends IOException {
        NotEvidence(String sentence) {
            super(sentence);
        }
    }

    /**
     * Writes the file.
     *
     * @param connection as for {@link DatabaseCheck}
     * @param done is told now and then how many leaves are written
     */
    public static void write(Connection connection, UUID tenant, Writer out, LongConsumer done)
            throws SQLException, IOException {
        EvidenceQueries queries = new EvidenceQueries(connection, tenant);
        ObjectNode head = JsonNodeFactory.instance.objectNode();
        head.put("schema", SCHEMA);
        head.put("tenant", tenant.toString());
        List<String> known = queries.keys();
        head.put(
                "origin",
                known.isEmpty()
                        ? ""
                        : VerifierKey.parse(known.get(known.size() - 1)).name());
        var keys = head.putArray("keys");
        known.forEach(keys::add);
        out.write(head + "\n");
        long[] leaves = {0};
        try {
            queries.leaves(BATCH, batch -> {
                write(batch, out);
                leaves[0] += batch.size();
                done.accept(leaves[0]);
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        ObjectNode end = JsonNodeFactory.instance.objectNode();
        end.put("leaves", leaves[0]);
        out.write(end + "\n");
        out.flush();
    }

    private static void write(List<EvidenceLeaf> batch, Writer out) {
        List<String> lines = batch.parallelStream()
                .map(leaf -> LeafJson.members(leaf) + "\n")
                .toList();
        try {
            for (String line : lines) {
                out.write(line);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Checks a file with nothing but the file and what is known from outside.
     *
     * @throws NotEvidence when its first line is not the head of an evidence file
     */
    public static CheckResult check(BufferedReader file, Known known, Iterable<RecordCheck> checks) throws IOException {
        UUID tenant = head(file.readLine());
        LedgerCheck check = new LedgerCheck(tenant, known);
        Looks looks = new Looks(checks);
        boolean ended = false;
        long number = 1;
        for (String line = file.readLine(); line != null; line = file.readLine()) {
            number++;
            ended = line(line, number, check, looks);
        }
        if (!ended) {
            check.findings().add(Problem.FILE_ENDS_EARLY, "");
        }
        return check.finish(0);
    }

    private static UUID head(@Nullable String line) throws NotEvidence {
        try {
            JsonNode head = LeafJson.MAPPER.readTree(line == null ? "" : line);
            if (head.path("schema").asString("").equals(SCHEMA)) {
                return UUID.fromString(head.path("tenant").asString(""));
            }
        } catch (RuntimeException noJson) {
            // Said below.
        }
        throw new NotEvidence("This is not an evidence file: its first line has no schema " + SCHEMA + ".");
    }

    /** Takes one line; true for the last one, when it counts the leaves before it. */
    private static boolean line(String line, long number, LedgerCheck check, Looks looks) {
        try {
            JsonNode object = LeafJson.MAPPER.readTree(line);
            if (object.has("leaves")) {
                return object.path("leaves").asLong(-1) == number - 2;
            }
            check.leaf(PreparedLeaf.of(LeafJson.read(object), looks), (level, position, hash) -> {});
        } catch (RuntimeException unreadable) {
            check.findings().add(Problem.LINE_UNREADABLE, "", number);
        }
        return false;
    }
}
