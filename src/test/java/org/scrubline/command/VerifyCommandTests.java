package org.scrubline.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.ledger.Checkpoints;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Receipts;
import org.scrubline.ledger.check.EvidenceFixture;
import org.scrubline.ledger.check.EvidenceFixture.Evidence;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;

/** The two commands on a database server, as the server's own role, and on the files they write. */
@ScrublineTest
class VerifyCommandTests {

    private record Answer(int exit, String out, String err) {}

    @Autowired
    TestOrganisations organisations;

    @Autowired
    EvidenceFixture fixture;

    @Autowired
    Checkpoints checkpoints;

    @Autowired
    Receipts receipts;

    @Autowired
    JdbcConnectionDetails database;

    @TempDir
    Path folder;

    Evidence evidence;

    @BeforeEach
    void write() {
        evidence = fixture.of(organisations);
    }

    private Map<String, String> environment() {
        return Map.of(
                "SPRING_DATASOURCE_URL", database.getJdbcUrl(),
                "SPRING_DATASOURCE_USERNAME", Objects.requireNonNull(database.getUsername()),
                "SPRING_DATASOURCE_PASSWORD", Objects.requireNonNull(database.getPassword()),
                "SCRUBLINE_LEDGER_KEYFILE", "target/test-ledger.key");
    }

    private Answer verify(Map<String, String> environment, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        List<String> line = new ArrayList<>(List.of("verify"));
        line.addAll(List.of(args));
        int exit = Commands.run(line, new Terminal(print(out), print(err), environment))
                .orElseThrow();
        return new Answer(exit, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private static PrintStream print(ByteArrayOutputStream out) {
        return new PrintStream(out, true, StandardCharsets.UTF_8);
    }

    private String file(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    private String checkpoint() throws IOException {
        String note = evidence.theatre()
                .organisation()
                .in(() -> checkpoints.newest().orElseThrow().note());
        return file("checkpoint.txt", note);
    }

    private String key() throws IOException {
        return file("key.txt", evidence.theatre().organisation().in(checkpoints::verifierKey) + "\n");
    }

    private String tenant() {
        return evidence.tenant().toString();
    }

    @Test
    void aDatabaseIsCheckedAsTheServersOwnRole() throws IOException {
        Answer answer = verify(environment(), "--tenant", tenant(), "--checkpoint", checkpoint(), "--key", key());
        assertThat(answer.err()).isEmpty();
        assertThat(answer.exit()).isZero();
        assertThat(answer.out())
                .contains("Organisation " + tenant(), "3 of them signed sheets", "2 checkpoints")
                .contains("1 checkpoint that you keep was compared", "signed with the key you know", "Sound: ");
    }

    @Test
    void theKeyFileOfTheMachineStandsInForAKeyThatIsKept() {
        assertThat(verify(environment(), "--tenant", tenant()).out()).contains("signed with the key you know");
    }

    @Test
    void everythingIsWrittenToAFileAndCheckedWithoutADatabase() throws IOException {
        Path file = folder.resolve("evidence.jsonl");
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        int exit = Commands.run(
                        List.of("evidence", "--tenant", tenant(), "--out", file.toString()),
                        new Terminal(print(out), print(err), environment()))
                .orElseThrow();
        assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
        assertThat(exit).isZero();
        Answer sound = verify(Map.of(), "--file", file.toString(), "--checkpoint", checkpoint(), "--key", key());
        assertThat(sound.exit()).isZero();
        assertThat(sound.out()).contains("Sound: ");

        List<String> lines = new ArrayList<>(Files.readAllLines(file));
        lines.replaceAll(line -> line.replace("\"signer_name\":\"Ansel Verrin\"", "\"signer_name\":\"Another\""));
        Answer unsound = verify(Map.of(), "--file", file("changed.jsonl", String.join("\n", lines) + "\n"));
        assertThat(unsound.exit()).isEqualTo(1);
        assertThat(unsound.out())
                .contains("Signed sheet " + evidence.signed().get(0).id() + ": its rows in signed_sheet are not those")
                .containsPattern("Not sound: \\d+ problems\\.");
    }

    @Test
    void aReceiptIsCheckedWithoutADatabase() throws IOException {
        String json = evidence.theatre()
                .organisation()
                .in(() -> receipts.of(
                                LeafKind.SIGNATURE, evidence.signed().get(0).id())
                        .json());
        Answer sound = verify(Map.of(), "--receipt", file("receipt.json", json), "--key", key());
        assertThat(sound.exit()).isZero();
        String changed = file("changed.json", json.replace("\"band\" : \"B\"", "\"band\" : \"A\""));
        assertThat(verify(Map.of(), "--receipt", changed).exit()).isEqualTo(1);
    }

    @Test
    void aCheckpointOfALedgerThatIsNotThereIsAProblem() throws IOException {
        Evidence other = fixture.of(organisations);
        String note = other.theatre()
                .organisation()
                .in(() -> checkpoints.newest().orElseThrow().note());
        Answer answer = verify(environment(), "--tenant", tenant(), "--checkpoint", file("other.txt", note));
        assertThat(answer.exit()).isEqualTo(1);
        assertThat(answer.out()).contains("nothing of that ledger is here");
    }

    @Test
    void whatCannotRunSaysWhy() throws IOException {
        for (String[] args : new String[][] {
            {"--file", folder.resolve("missing").toString()},
            {"--receipt", folder.resolve("missing").toString()},
            {"--file", file("no.jsonl", "{}\n")},
            {"--receipt", file("no.json", "{}")},
            {"--checkpoint", file("no.txt", "nothing")},
            {"--key", file("no-key.txt", "nothing")},
            {"--tenant", "nobody"},
            {"--wrong", "x"},
            {"--file"},
            {"--export", "x"},
            {"--file", "x", "--receipt", "y"},
            {"--scrubline.data-directory=" + folder}
        }) {
            Answer answer = verify(Map.of(), args);
            assertThat(answer.exit()).as(String.join(" ", args)).isEqualTo(2);
            assertThat(answer.err()).isNotBlank();
            assertThat(answer.out()).isEmpty();
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"verify", "evidence"})
    void helpIsPrinted(String command) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        assertThat(Commands.run(List.of(command, "--help"), print(out), System.err))
                .hasValue(0);
        assertThat(out.toString(StandardCharsets.UTF_8)).contains("Usage: scrubline " + command);
    }
}
