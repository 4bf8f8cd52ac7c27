package org.scrubline.ledger.check;

import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.leaf.LeafEntry;
import org.scrubline.ledger.merkle.MerkleProof;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.SignedCheckpoint.Standing;
import org.scrubline.ledger.note.VerifierKey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** One record with its place in the ledger, as a file anyone can check without the server (docs/evidence-format.md). */
public final class ReceiptFile {

    /** Name and version of the form. */
    public static final String SCHEMA = "scrubline-receipt/1";

    private static final String CONTENT = "content";

    private ReceiptFile() {}

    /** A file that is no receipt at all. */
    public static class NotAReceipt extends Exception {
        NotAReceipt(String sentence) {
            super(sentence);
        }
    }

    /**
     * The receipt's text.
     *
     * @param rows the record's rows by table, JSON
     * @param path from the leaf to the root of the checkpoint
     */
    public static String write(
            long index,
            String entry,
            Map<String, List<String>> rows,
            List<byte[]> path,
            SignedCheckpoint checkpoint,
            String verifierKey) {
        LeafEntry said = LeafEntry.read(entry);
        PreparedLeaf leaf =
                PreparedLeaf.of(new EvidenceLeaf(index, said.kind(), said.record(), entry, "", rows), Looks.NONE);
        ObjectNode object = LeafJson.MAPPER.createObjectNode();
        object.put("schema", SCHEMA);
        object.put("origin", checkpoint.checkpoint().origin());
        content(rows, said.kind()).ifPresent(text -> object.set(CONTENT, LeafJson.MAPPER.readTree(text)));
        object.setAll(LeafJson.members(new EvidenceLeaf(index, said.kind(), said.record(), entry, leaf.hash(), rows)));
        ArrayNode proof = object.putArray("proof");
        path.forEach(hash -> proof.add(Base64.getEncoder().encodeToString(hash)));
        object.put("checkpoint", checkpoint.note());
        object.put("verifierKey", verifierKey);
        return object.toPrettyString() + "\n";
    }

    /** The signed text of a record whose first table has one. */
    private static Optional<String> content(Map<String, List<String>> rows, String kind) {
        return LedgerCheck.kind(kind)
                .map(LeafKind::rows)
                .flatMap(tables -> rows.getOrDefault(tables.get(0).table(), List.of()).stream()
                        .findFirst())
                .map(row -> LeafJson.MAPPER.readTree(row).path(CONTENT).asString(""))
                .filter(text -> !text.isEmpty());
    }

    /**
     * Checks a receipt with nothing but the receipt and what is known from outside. Without a key from outside, the one
     * in the receipt is used, which proves no more than that the receipt agrees with itself.
     *
     * @throws NotAReceipt when the text is no receipt; the message says why
     */
    public static CheckResult check(String text, Known known, Iterable<RecordCheck> checks) throws NotAReceipt {
        Receipt receipt = read(text);
        UUID tenant = receipt.tenant();
        Known about = known.about(tenant);
        Findings findings = new Findings();
        compare(receipt, tenant, findings, checks);
        List<VerifierKey> keys = about.keys().isEmpty() ? List.of(receipt.key()) : about.keys();
        Standing standing = receipt.checkpoint().standing(keys);
        long size = receipt.checkpoint().checkpoint().size();
        if (standing == Standing.BROKEN) {
            findings.add(Problem.CHECKPOINT_SIGNATURE, LeafKind.CHECKPOINT.name(), size);
        } else if (standing == Standing.UNKNOWN) {
            findings.add(
                    Problem.NEWEST_KEY,
                    LeafKind.CHECKPOINT.name(),
                    size,
                    receipt.key().text());
        }
        return new CheckResult(
                tenant,
                1,
                receipt.leaf().kind().equals(LeafKind.SIGNATURE.name()) ? 1 : 0,
                1,
                size,
                receipt.checkpoint().signer(keys).map(VerifierKey::text).orElse(null),
                !about.keys().isEmpty(),
                0,
                0,
                List.of(),
                findings.kept(),
                findings.count());
    }

    private static void compare(Receipt receipt, UUID tenant, Findings findings, Iterable<RecordCheck> checks) {
        PreparedLeaf leaf = PreparedLeaf.of(receipt.leaf(), new Looks(checks));
        LeafEntry said = leaf.said();
        long number = receipt.leaf().index() + 1;
        if (said == null || leaf.rows() == null) {
            findings.add(Problem.ENTRY_UNREADABLE, receipt.leaf().kind(), number);
            return;
        }
        if (!leaf.isAbout(tenant)) {
            findings.add(Problem.ENTRY_ELSEWHERE, receipt.leaf().kind(), number);
        }
        Optional<LeafKind> kind = LedgerCheck.kind(receipt.leaf().kind());
        if (kind.isEmpty()) {
            findings.add(Problem.UNKNOWN_KIND, "", number, receipt.leaf().kind());
        }
        RowCheck rows = new RowCheck(findings);
        kind.ifPresent(known -> rows.check(known, leaf, said.rows()));
        rows.reportGone();
        if (!receipt.contentAgrees()) {
            findings.add(
                    Problem.CONTRADICTION, receipt.leaf().kind(), receipt.leaf().record(), "receipt", CONTENT);
        }
        byte[] hash = HexFormat.of().parseHex(leaf.hash());
        if (!MerkleProof.includes(
                receipt.leaf().index(),
                receipt.checkpoint().checkpoint().size(),
                hash,
                receipt.path(),
                receipt.checkpoint().checkpoint().rootHash())) {
            findings.add(Problem.PATH, receipt.leaf().kind(), receipt.leaf().record());
        }
    }

    private static Receipt read(String text) throws NotAReceipt {
        try {
            JsonNode object = LeafJson.MAPPER.readTree(text);
            if (!object.path("schema").asString("").equals(SCHEMA)) {
                throw new NotAReceipt("This is not a receipt: it has no schema " + SCHEMA + ".");
            }
            List<byte[]> path = new ArrayList<>();
            object.required("proof")
                    .forEach(hash -> path.add(Base64.getDecoder().decode(hash.asString())));
            return new Receipt(
                    LeafJson.read(object),
                    object.path(CONTENT),
                    path,
                    SignedCheckpoint.parse(object.required("checkpoint").asString()),
                    VerifierKey.parse(object.required("verifierKey").asString()));
        } catch (RuntimeException malformed) {
            throw new NotAReceipt("This receipt cannot be read: " + malformed.getMessage());
        }
    }

    private record Receipt(
            EvidenceLeaf leaf, JsonNode content, List<byte[]> path, SignedCheckpoint checkpoint, VerifierKey key) {

        /** The organisation the checkpoint names, which the signature covers. */
        UUID tenant() throws NotAReceipt {
            String origin = checkpoint.checkpoint().origin();
            try {
                return UUID.fromString(origin.substring(origin.lastIndexOf('/') + 1));
            } catch (IllegalArgumentException noTenant) {
                throw new NotAReceipt("This receipt names no organisation: " + origin);
            }
        }

        boolean contentAgrees() {
            Optional<JsonNode> signed =
                    ReceiptFile.content(leaf.rows(), leaf.kind()).map(text -> LeafJson.MAPPER.readTree(text));
            return Stream.of(content)
                    .filter(told -> !told.isMissingNode())
                    .allMatch(told -> signed.filter(told::equals).isPresent());
        }
    }
}
