package org.scrubline.ledger.note;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class KeysTests {

    /**
     * Private and public half of a published test key in the form of signed notes: github.com/transparency-dev/tessera,
     * testdata/build_log.sh (Apache License 2.0).
     */
    private static final String PUBLISHED_SEED = "AeymY/SZAX0jZcJ8enZ5FY1Dz+wTML2yWSkK+9DSF3eg";

    private static final String PUBLISHED =
            "example.com/log/testdata+33d7b496+AeHTu4Q3hEIMHNqc6fASMsq3rKNx280NI+oO5xCFkkSx";

    @TempDir
    Path folder;

    /** RFC 8032 section 7.1, tests 1 to 3. */
    @ParameterizedTest
    @CsvSource(
            nullValues = "-",
            value = {
                "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60,"
                        + "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a,'',"
                        + "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bacc61e39701cf9b46b"
                        + "d25bf5f0595bbe24655141438e7a100b",
                "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb,"
                        + "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c,72,"
                        + "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e458f3613d0f11d8c"
                        + "387b2eaeb4302aeeb00d291612bb0c00",
                "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7,"
                        + "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025,af82,"
                        + "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac18ff9b538d16f290ae67f760984dc659"
                        + "4a7c15e9716ed28dc027beceea1ec40a"
            })
    void signaturesAreThoseOfTheStandard(String seed, String publicKey, String message, String signature) {
        HexFormat hex = HexFormat.of();
        SigningKey key = SigningKey.ofSeed(hex.parseHex(seed));
        byte[] text = hex.parseHex(message);
        assertThat(hex.formatHex(key.sign(text))).isEqualTo(signature);
        VerifierKey verifier = key.verifier("name");
        byte[] typed = Base64.getDecoder().decode(verifier.text().split("\\+", 3)[2]);
        assertThat(hex.formatHex(Arrays.copyOfRange(typed, 1, typed.length))).isEqualTo(publicKey);
        assertThat(verifier.verifies(text, hex.parseHex(signature))).isTrue();
        byte[] other = Arrays.copyOf(text, text.length + 1);
        assertThat(verifier.verifies(other, hex.parseHex(signature))).isFalse();
        assertThat(verifier.verifies(text, new byte[64])).isFalse();
        assertThat(verifier.verifies(text, new byte[3])).isFalse();
    }

    @Test
    void aVerifierKeyHasThePublishedForm() {
        byte[] typed = Base64.getDecoder().decode(PUBLISHED_SEED);
        SigningKey key = SigningKey.ofSeed(Arrays.copyOfRange(typed, 1, typed.length));
        assertThat(key.verifier("example.com/log/testdata").text()).isEqualTo(PUBLISHED);
        assertThat(VerifierKey.parse(PUBLISHED + "\n")).isEqualTo(key.verifier("example.com/log/testdata"));
        assertThat(VerifierKey.parse(PUBLISHED)).isNotEqualTo(key.verifier("example.com/log/other"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "example.com/log/testdata",
                "example.com/log/testdata+33d7b497+AeHTu4Q3hEIMHNqc6fASMsq3rKNx280NI+oO5xCFkkSx",
                "example.com/log/other+33d7b496+AeHTu4Q3hEIMHNqc6fASMsq3rKNx280NI+oO5xCFkkSx",
                "two words+33d7b496+AeHTu4Q3hEIMHNqc6fASMsq3rKNx280NI+oO5xCFkkSx",
                "example.com/log/testdata+33d7b496+AuHTu4Q3hEIMHNqc6fASMsq3rKNx280NI+oO5xCFkkSx",
                "example.com/log/testdata+33d7b496+AeHT",
                "example.com/log/testdata+33d7b496+A"
            })
    void whatIsNoVerifierKeyIsRefused(String text) {
        assertThatThrownBy(() -> VerifierKey.parse(text)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void theKeyFileIsMadeOnceAndReadableByItsOwnerAlone() throws IOException {
        Path file = folder.resolve("new").resolve("ledger.key");
        SigningKey first = KeyFile.readOrCreate(file);
        SigningKey again = KeyFile.readOrCreate(file);
        assertThat(again.text()).isEqualTo(first.text());
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        assertThat(Files.list(file.getParent())).containsExactly(file);
        assertThat(KeyFile.readOrCreate(folder.resolve("another.key")).text()).isNotEqualTo(first.text());
    }

    @Test
    void aFileThatHoldsNoKeyIsNamedAndLeftAlone() throws IOException {
        Path file = folder.resolve("ledger.key");
        Files.writeString(file, "not a key");
        assertThatThrownBy(() -> KeyFile.readOrCreate(file))
                .isInstanceOf(IOException.class)
                .hasMessageContaining(file.toString());
        assertThat(file).hasContent("not a key");
    }
}
