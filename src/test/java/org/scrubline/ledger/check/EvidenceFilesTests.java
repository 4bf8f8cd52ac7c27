package org.scrubline.ledger.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.StringReader;
import java.io.StringWriter;
import java.sql.Connection;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.ServiceLoader;
import java.util.UUID;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Receipt;
import org.scrubline.ledger.Receipts;
import org.scrubline.ledger.RecordCheck;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.SigningKeys;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.database.TestDatabase;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** Evidence files and receipts, checked without a database, and what is found when they are damaged. */
@ScrublineTest
class EvidenceFilesTests {

    private static final Iterable<RecordCheck> CHECKS = ServiceLoader.load(RecordCheck.class);

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    Checkpoints checkpoints;

    @Autowired
    Receipts receipts;

    Evidence evidence;
    Known known;

    @BeforeEach
    void write() {
        evidence = fixture.of(organisations);
        known = Known.read(
                List.of(evidence.theatre().organisation().in(checkpoints::verifierKey)),
                List.of(evidence.theatre()
                        .organisation()
                        .in(() -> checkpoints.newest().orElseThrow().note())));
    }

    private List<String> lines() throws Exception {
        StringWriter out = new StringWriter();
        try (Connection connection = TestDatabase.superuser()) {
            connection.setAutoCommit(false);
            EvidenceFile.write(connection, evidence.tenant(), out, done -> {});
            connection.rollback();
        }
        return new ArrayList<>(out.toString().lines().toList());
    }

    private CheckResult check(List<String> lines) throws Exception {
        String text = lines.stream().collect(Collectors.joining("\n", "", "\n"));
        return EvidenceFile.check(new BufferedReader(new StringReader(text)), known, CHECKS);
    }

    @Test
    void anEvidenceFileIsSoundByItself() throws Exception {
        CheckResult result = check(lines());
        assertThat(result.found()).isEmpty();
        assertThat(result.records()).isEqualTo(3);
        assertThat(result.checkpoints()).isEqualTo(2);
        assertThat(result.held()).isEqualTo(1);
        assertThat(result.tenant()).isEqualTo(evidence.tenant());
    }

    @Test
    void everyDamageToAFileIsFound() throws Exception {
        List<String> lines = lines();
        int signed = lines.size() - 4;
        assertThat(lines.get(signed)).contains("SIGNATURE");
        assertThat(problems(lines, all -> all.set(signed, all.get(signed).replace("\"late\":false", "\"late\":true"))))
                .containsExactly(Problem.ROWS_CHANGED);
        assertThat(problems(lines, all -> all.remove(signed))).contains(Problem.LEAVES_MISSING);
        assertThat(problems(lines, all -> Collections.swap(all, 2, 3))).contains(Problem.LEAF_OUT_OF_ORDER);
        assertThat(problems(lines, all -> all.add(3, all.get(2)))).contains(Problem.SECOND_LEAF);
        assertThat(problems(lines, all -> all.remove(all.size() - 1))).containsExactly(Problem.FILE_ENDS_EARLY);
        assertThat(problems(lines, all -> all.remove(all.size() - 2)))
                .as("the last checkpoint is gone, and the count with it")
                .containsExactly(Problem.FILE_ENDS_EARLY);
        assertThat(problems(lines, all -> all.subList(4, all.size()).clear()))
                .contains(Problem.FILE_ENDS_EARLY, Problem.HELD_LONGER);
        assertThat(problems(lines, all -> all.set(2, "{\"index\":"))).contains(Problem.LINE_UNREADABLE);
        assertThat(problems(
                        lines,
                        all -> all.set(2, all.get(2).replaceFirst("\"kind\":\"[A-Z_]+\"", "\"kind\":\"NOVEL\""))))
                .contains(Problem.ENTRY_ELSEWHERE, Problem.UNKNOWN_KIND);
    }

    private List<Problem> problems(List<String> lines, Consumer<List<String>> damage) throws Exception {
        List<String> copy = new ArrayList<>(lines);
        damage.accept(copy);
        return problems(check(copy));
    }

    private static List<Problem> problems(CheckResult result) {
        return result.found().stream().map(Finding::problem).toList();
    }

    @Test
    void whatIsNoEvidenceFileIsRefused() {
        for (String text : List.of("", "not json\n", "{}\n", "{\"schema\":\"scrubline-evidence/2\"}\n")) {
            assertThatThrownBy(
                            () -> EvidenceFile.check(new BufferedReader(new StringReader(text)), Known.NOTHING, CHECKS))
                    .isInstanceOf(EvidenceFile.NotEvidence.class);
        }
    }

    @Test
    void aReceiptProvesItsRecord() throws Exception {
        Receipt receipt = receipt();
        CheckResult result = ReceiptFile.check(receipt.json(), known, CHECKS);
        assertThat(result.found()).isEmpty();
        assertThat(result.keyGiven()).isTrue();
        assertThat(ReceiptFile.check(receipt.json(), Known.NOTHING, CHECKS).keyGiven())
                .isFalse();
        assertThat(receipt.json()).contains("\"content\"", "\"reviewed\"", "\"proof\"");
    }

    @Test
    void everyDamageToAReceiptIsFound() throws Exception {
        String json = receipt().json();
        assertThat(damaged(json, text -> text.replaceFirst("\"late\" : false", "\"late\" : true")))
                .containsExactly(Problem.CONTRADICTION);
        assertThat(damaged(json, text -> text.replace("\"band\" : \"B\"", "\"band\" : \"C\"")))
                .contains(Problem.ROWS_CHANGED);
        assertThat(damaged(json, text -> text.replaceFirst("\"index\" : (\\d+)", "\"index\" : 0")))
                .containsExactly(Problem.PATH);
        assertThat(damaged(json, text -> text.replaceFirst("\"proof\" : \\[ \"[^\"]*\",", "\"proof\" : [")))
                .containsExactly(Problem.PATH);
        SignedCheckpoint held = known.checkpoints().get(0);
        String forged = SigningKeys.fresh()
                .sign(held.checkpoint(), held.checkpoint().origin())
                .note();
        assertThat(damaged(json, text -> text.replace(held.note().replace("\n", "\\n"), forged.replace("\n", "\\n"))))
                .containsExactly(Problem.NEWEST_KEY);
        String larger = held.note().replace("\n" + held.checkpoint().size() + "\n", "\n999\n");
        assertThat(damaged(json, text -> text.replace(held.note().replace("\n", "\\n"), larger.replace("\n", "\\n"))))
                .contains(Problem.CHECKPOINT_SIGNATURE);
    }

    private List<Problem> damaged(String json, UnaryOperator<String> damage) throws Exception {
        String damaged = damage.apply(json);
        assertThat(damaged).isNotEqualTo(json);
        return problems(ReceiptFile.check(damaged, known, CHECKS));
    }

    @Test
    void whatIsNoReceiptIsRefused() throws Exception {
        String json = receipt().json();
        for (String text : List.of("", "[]", "{}", json.replace("\"proof\"", "\"path\""), json.replace("+", "-"))) {
            assertThatThrownBy(() -> ReceiptFile.check(text, Known.NOTHING, CHECKS))
                    .isInstanceOf(ReceiptFile.NotAReceipt.class);
        }
    }

    @Test
    void aRecordNoCheckpointCoversGetsOneWithItsReceipt() throws Exception {
        long before = evidence.theatre().organisation().in(checkpoints::size);
        Receipt receipt = evidence.theatre().organisation().in(() -> {
            UUID signed = evidence.signed().get(1).id();
            return receipts.of(LeafKind.SIGNATURE, signed);
        });
        assertThat(evidence.theatre().organisation().in(checkpoints::size))
                .as("covered already")
                .isEqualTo(before);
        assertThat(receipt.checkpoint().size()).isGreaterThan(receipt.index());
        Evidence fresh = fixture.withoutCheckpoint(organisations);
        Receipt first = fresh.theatre()
                .organisation()
                .in(() -> receipts.of(LeafKind.SIGNATURE, fresh.signed().get(0).id()));
        assertThat(first.checkpoint().size()).isGreaterThan(first.index());
        assertThat(ReceiptFile.check(first.json(), Known.NOTHING, CHECKS).sound())
                .isTrue();
    }

    @Test
    void thereIsNoReceiptForWhatIsNotThere() {
        assertThatThrownBy(() -> evidence.theatre()
                        .organisation()
                        .in(() -> receipts.of(
                                LeafKind.REMARK, evidence.signed().get(0).id())))
                .isInstanceOf(NotFound.class);
    }

    private Receipt receipt() {
        return evidence.theatre()
                .organisation()
                .in(() ->
                        receipts.of(LeafKind.SIGNATURE, evidence.signed().get(0).id()));
    }
}
