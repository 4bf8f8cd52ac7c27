package org.scrubline.ledger.note;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.ledger.merkle.MerkleHash;
import org.scrubline.ledger.note.SignedCheckpoint.Standing;

/** The text forms of C2SP signed-note and tlog-checkpoint, v1.0.0. */
class SignedCheckpointTests {

    private static final String ORIGIN = "records.example/ledger/0b6f2b9e-5b6e-4f0e-9a5f-3f2b8b6d1c11";

    /** The example in the text of tlog-checkpoint (C2SP/C2SP, tlog-checkpoint.md, commit 2793893). */
    private static final String PUBLISHED = """
            example.com/behind-the-sofa
            20852163
            CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=

            — example.com/behind-the-sofa Az3grlgtzPICa5OS8npVmf1Myq/5IZniMp+ZJurmRDeOoRDe4URYN7u5/Zhcyv2q1gGzGku9nTo+zyWE+xeMcTOAYQ8=
            """;

    private final SigningKey key = SigningKey.fresh();
    private final Checkpoint checkpoint = Checkpoint.of(ORIGIN, 7, MerkleHash.leaf("x"));
    private final SignedCheckpoint signed = key.sign(checkpoint, ORIGIN);

    @Test
    void thePublishedExampleIsRead() {
        SignedCheckpoint read = SignedCheckpoint.parse(PUBLISHED);
        assertThat(read.checkpoint())
                .isEqualTo(new Checkpoint(
                        "example.com/behind-the-sofa", 20852163, "CsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I="));
        assertThat(read.signatures())
                .singleElement()
                .extracting(SignedCheckpoint.SignatureLine::name)
                .isEqualTo("example.com/behind-the-sofa");
        assertThat(read.standing(List.of(key.verifier(ORIGIN)))).isEqualTo(Standing.UNKNOWN);
    }

    @Test
    void whatIsSignedIsReadBackAndHolds() {
        assertThat(signed.note()).startsWith(ORIGIN + "\n7\n").contains("\n\n— " + ORIGIN + " ");
        SignedCheckpoint read = SignedCheckpoint.parse(signed.note());
        assertThat(read).isEqualTo(signed);
        assertThat(read.checkpoint()).isEqualTo(checkpoint);
        assertThat(read.standing(List.of(SigningKey.fresh().verifier(ORIGIN), key.verifier(ORIGIN))))
                .isEqualTo(Standing.SIGNED);
        assertThat(read.signer(List.of(key.verifier(ORIGIN)))).contains(key.verifier(ORIGIN));
        assertThat(checkpoint.hasRoot(MerkleHash.leaf("x"))).isTrue();
        assertThat(checkpoint.hasRoot(MerkleHash.leaf("y"))).isFalse();
    }

    @Test
    void anotherSizeUnderTheSameSignatureIsBroken() {
        SignedCheckpoint other = SignedCheckpoint.parse(signed.note().replace("\n7\n", "\n8\n"));
        assertThat(other.standing(List.of(key.verifier(ORIGIN)))).isEqualTo(Standing.BROKEN);
        assertThat(other.signer(List.of(key.verifier(ORIGIN)))).isEmpty();
    }

    @Test
    void signaturesOfStrangersAreIgnoredBesideOneThatHolds() {
        String stranger = SigningKey.fresh()
                .sign(checkpoint, "witness.example")
                .note()
                .lines()
                .skip(4)
                .findFirst()
                .orElseThrow();
        SignedCheckpoint both = SignedCheckpoint.parse(signed.note() + stranger + "\n");
        assertThat(both.signatures()).hasSize(2);
        assertThat(both.standing(List.of(key.verifier(ORIGIN)))).isEqualTo(Standing.SIGNED);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n",
                "a\n01\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAAAAA=\n",
                "a\n-1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAAAAA=\n",
                "a\n99999999999999999999\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAAAAA=\n",
                "a\n1\nCsUY\n\n— a AAAAAAA=\n",
                "a\n1\nnot base64!\n\n— a AAAAAAA=\n",
                "a\n1\n\n— a AAAAAAA=\n",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n- a AAAAAAA=\n",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAA\n",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a+b AAAAAAA=\n",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAAAAA=",
                "a\t\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n— a AAAAAAA=\n",
                "a\n1\nCsUYapGGPo4dkMgIAUqom/Xajj7h2fB2MPA3j2jxq2I=\n\n"
            })
    void whatIsNoSignedCheckpointIsRefused(String note) {
        assertThatThrownBy(() -> SignedCheckpoint.parse(note)).isInstanceOf(IllegalArgumentException.class);
    }
}
