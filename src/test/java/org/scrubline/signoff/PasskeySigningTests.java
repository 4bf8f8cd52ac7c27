package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrl;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.AssertionCheck;
import org.scrubline.platform.AssertionFault;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import org.springframework.transaction.support.TransactionTemplate;

/** Signing with a passkey: its challenge is the hash of the sheet, so its answer is the signature itself. */
@ScrublineTest
class PasskeySigningTests {

    private static final int AT_ONCE = 20;

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    SignedSheets signedSheets;

    @Autowired
    Passkeys passkeys;

    @Autowired
    Assertions assertions;

    @Autowired
    Ledger ledger;

    @Autowired
    Clock clock;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    TransactionTemplate transaction;

    Theatre theatre;
    SoftwarePasskey passkey;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        passkey = SoftwarePasskey.of(theatre.supervisor().accountId(), passkeys);
    }

    @Test
    void theReviewPageOffersThePasskeyToWhoHasOneAndAsksItForTheHash() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String asked = "data-challenge=\"" + challenge(sheet) + "\"";
        review(sheet).andExpect(content().string(containsString(asked)));

        UUID key = passkeys.of(theatre.supervisor().accountId()).get(0).id();
        passkeys.remove(theatre.supervisor().accountId(), key);
        review(sheet)
                .andExpect(content().string(not(containsString("data-passkey"))))
                .andExpect(content().string(containsString("name=\"password\"")));
    }

    @Test
    void aPasskeySignsAndItsSignatureIsKeptUnderTheRecordAndInTheLedger() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        SignedSheet signed = signAndRead(sheet);

        SignedContent content = SignedContent.read(signed.content());
        Assertion kept = kept(signed).orElseThrow();
        assertThat(content.credential()).isEqualTo(new CredentialUsed(CredentialUsed.Kind.PASSKEY, kept.hash()));
        assertThat(kept.challenge()).isEqualTo(base64(content.reviewedHash()));
        assertThat(kept.origin()).isEqualTo(SoftwarePasskey.ORIGIN);
        assertThat(AssertionCheck.fault(kept, CanonicalJson.hashBytes(content.reviewedHash())))
                .isEmpty();
        assertThat(CredentialCheck.fault(claim(content), kept)).isEmpty();
        assertThat(leaf(signed)).contains("\"kind\":\"ASSERTION\"", "\"signature_assertion\":\"");
        mockMvc.perform(get("/signed/{id}", signed.id()).with(LogIn.as(theatre.trainee())))
                .andExpect(content().string(containsString("signed the hash of what was reviewed")));
    }

    @Test
    void aPasswordLeavesNoAssertionAndTheRecordSaysSo() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        send(sheet, hash(sheet), TestOrganisations.PASSWORD, "").andExpect(status().is3xxRedirection());
        SignedSheet signed = record(sheet);

        assertThat(kept(signed)).isEmpty();
        assertThat(SignedContent.read(signed.content()).credential())
                .isEqualTo(new CredentialUsed(CredentialUsed.Kind.PASSWORD, null));
        mockMvc.perform(get("/signed/{id}", signed.id()).with(LogIn.as(theatre.trainee())))
                .andExpect(content().string(containsString("recognised by a password")));
    }

    @Test
    void theSameAnswerForAnotherSheetIsRefused() throws Exception {
        UUID first = fixture.complete(theatre, ended());
        UUID second = fixture.complete(theatre, ended());
        String answer = answer(first);
        sign(first, answer).andExpect(status().is3xxRedirection());

        sign(second, answer)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("The passkey answered for something else")));
        assertUnsigned(second);
        sign(second, answer(second)).andExpect(status().is3xxRedirection());
    }

    @Test
    void anAnswerToAnEarlierStateIsAConflictAndWithTheNewHashARefusal() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String earlier = hash(sheet);
        String answer = answer(sheet);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(2)));

        send(sheet, earlier, "", answer).andExpect(status().isConflict());
        sign(sheet, answer)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("an earlier state of this one")));
        assertUnsigned(sheet);
        sign(sheet, answer(sheet)).andExpect(status().is3xxRedirection());
    }

    @Test
    void theSameAnswerSentAgainLeadsToTheFirstSignature() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String answer = answer(sheet);
        sign(sheet, answer).andExpect(status().is3xxRedirection());
        SignedSheet signed = record(sheet);

        send(sheet, SignedContent.read(signed.content()).reviewedHash(), "", answer)
                .andExpect(redirectedUrl("/signed/" + signed.id()));
        assertThat(count("signed_sheet", "sheet_id", sheet)).isEqualTo(1);
        assertThat(count("signature_assertion", "record_id", signed.id())).isEqualTo(1);
    }

    @Test
    void twentyAtOnceAreOneSignatureWithOneAssertion() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String answer = answer(sheet);
        String hash = hash(sheet);

        List<String> records = atOnce(() -> {
            try {
                return send(sheet, hash, "", answer).andReturn().getResponse().getRedirectedUrl();
            } catch (Exception e) {
                throw new IllegalStateException(e);
            }
        });
        SignedSheet signed = record(sheet);
        assertThat(records).hasSize(AT_ONCE).containsOnly("/signed/" + signed.id());
        assertThat(count("signed_sheet", "sheet_id", sheet)).isEqualTo(1);
        assertThat(count("signature_assertion", "record_id", signed.id())).isEqualTo(1);
    }

    @Test
    void aPasskeyOfAnotherAccountDoesNotSign() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        SignedIn colleague = theatre.organisation().join("Ottilie Brannock", org.scrubline.platform.Role.SUPERVISOR);
        SoftwarePasskey other = SoftwarePasskey.of(colleague.accountId(), passkeys);

        sign(sheet, other.answer(challenge(sheet)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("one of yours here")));
        assertUnsigned(sheet);
    }

    @Test
    void anAnswerThatNamesAnotherOwnerDoesNotSign() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        sign(sheet, passkey.answer(challenge(sheet), theatre.trainee().accountId()))
                .andExpect(status().isUnprocessableContent());
        assertUnsigned(sheet);
        sign(sheet, passkey.answer(challenge(sheet), theatre.supervisor().accountId()))
                .andExpect(status().is3xxRedirection());
    }

    @Test
    void aDeviceThatDidNotCheckItsOwnerDoesNotSign() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        sign(sheet, passkey.withoutVerification().answer(challenge(sheet)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("did not check that it was you")));
        assertUnsigned(sheet);
    }

    @Test
    void aCounterThatWentBackDoesNotSign() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        UUID later = fixture.complete(theatre, ended());
        sign(later, passkey.countingFrom(9).answer(challenge(later))).andExpect(status().is3xxRedirection());

        sign(sheet, passkey.countingFrom(8).answer(challenge(sheet)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("when a key has been copied")));
        assertUnsigned(sheet);
        sign(sheet, passkey.countingFrom(10).answer(challenge(sheet))).andExpect(status().is3xxRedirection());
    }

    @ParameterizedTest
    @ValueSource(strings = {"{}", "null", "[]", "not json", "{\"rawId\":\"AAAA\",\"response\":{}}", "{\"response\":7}"})
    void whatIsNoAnswerAtAllIsRefusedInWords(String nonsense) throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        sign(sheet, nonsense)
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Nothing was signed or changed")));
        assertUnsigned(sheet);
    }

    @Test
    void wrongAnswersCountLikeWrongPasswordsAndNeverKeepTheRightPasskeyOut() throws Exception {
        UUID sheet = fixture.complete(theatre, ended());
        String wrong = passkey.answer(Base64Url.text(new byte[32]));
        for (int i = 0; i < 5; i++) {
            sign(sheet, wrong).andExpect(status().isUnprocessableContent());
        }
        send(sheet, hash(sheet), TestOrganisations.PASSWORD, "")
                .andExpect(status().isUnprocessableContent())
                .andExpect(content().string(containsString("Too many wrong passwords")));
        assertUnsigned(sheet);
        sign(sheet, answer(sheet)).andExpect(status().is3xxRedirection());
    }

    @Test
    void anAssertionUnderAnotherRecordIsFound() throws Exception {
        SignedSheet first = signAndRead(fixture.complete(theatre, ended()));
        SignedSheet second = signAndRead(fixture.complete(theatre, ended()));
        SignedContent content = SignedContent.read(second.content());
        Assertion copied = kept(first).orElseThrow();

        assertThat(CredentialCheck.fault(claim(content), copied)).contains(CredentialCheck.Fault.EXCHANGED);
        assertThat(AssertionCheck.fault(copied, CanonicalJson.hashBytes(content.reviewedHash())))
                .contains(AssertionFault.CHALLENGE);
        assertThat(CredentialCheck.fault(claim(content), kept(second).orElseThrow()))
                .isEmpty();
    }

    @Test
    void anAssertionTakenAwayOrPutWhereNoneWasIsFound() throws Exception {
        SignedSheet signed = signAndRead(fixture.complete(theatre, ended()));
        SignedContent content = SignedContent.read(signed.content());
        SignedContent byPassword = with(content, new CredentialUsed(CredentialUsed.Kind.PASSWORD, null));
        Assertion assertion = kept(signed).orElseThrow();

        assertThat(CredentialCheck.fault(claim(content), null)).contains(CredentialCheck.Fault.MISSING);
        assertThat(CredentialCheck.fault(claim(byPassword), assertion)).contains(CredentialCheck.Fault.UNNAMED);
        assertThat(CredentialCheck.fault(claim(with(content, null)), assertion))
                .contains(CredentialCheck.Fault.UNNAMED);
        assertThat(CredentialCheck.fault(claim(byPassword), null)).isEmpty();
        assertThat(CredentialCheck.fault(claim(with(content, null)), null)).isEmpty();
    }

    @Test
    void aRecordWhoseHashWasExchangedTogetherWithItsCredentialIsFound() throws Exception {
        SignedSheet signed = signAndRead(fixture.complete(theatre, ended()));
        SignedContent content = SignedContent.read(signed.content());
        SignedContent forged = new SignedContent(
                content.reviewed(),
                "0".repeat(64),
                content.signedAt(),
                content.signedZone(),
                content.late(),
                content.credential(),
                content.countersign(),
                content.release(),
                content.device());
        assertThat(CredentialCheck.fault(claim(forged), kept(signed).orElseThrow()))
                .contains(CredentialCheck.Fault.INVALID);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update signature_assertion set signature = ''",
                "delete from signature_assertion",
                "update passkey set public_key = ''",
                "update passkey set account_id = id"
            })
    void theServerItselfMayNotChangeASignatureOrAKey(String statement) throws Exception {
        SignedSheet signed = signAndRead(fixture.complete(theatre, ended()));
        Assertion before = kept(signed).orElseThrow();
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> transaction.execute(
                                status -> jdbc.sql(statement).update())))
                .rootCause()
                .hasMessageContaining("permission denied");
        assertThat(kept(signed)).contains(before);
    }

    private static SignedContent with(SignedContent content, @Nullable CredentialUsed credential) {
        return new SignedContent(
                content.reviewed(),
                content.reviewedHash(),
                content.signedAt(),
                content.signedZone(),
                content.late(),
                credential,
                content.countersign(),
                content.release(),
                content.device());
    }

    private static List<String> atOnce(java.util.function.Supplier<String> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(AT_ONCE);
        try {
            CountDownLatch start = new CountDownLatch(1);
            List<Future<String>> running = new ArrayList<>();
            for (int i = 0; i < AT_ONCE; i++) {
                running.add(threads.submit(() -> {
                    start.await();
                    return work.get();
                }));
            }
            start.countDown();
            List<String> answers = new ArrayList<>();
            for (Future<String> one : running) {
                answers.add(one.get());
            }
            return answers;
        } finally {
            threads.shutdownNow();
        }
    }

    private Instant ended() {
        return clock.instant().minus(Duration.ofHours(2));
    }

    private String hash(UUID sheet) {
        return fixture.preview(theatre, sheet).contentHash();
    }

    private String challenge(UUID sheet) {
        return base64(hash(sheet));
    }

    private static String base64(String hash) {
        return Base64Url.text(CanonicalJson.hashBytes(hash));
    }

    private String answer(UUID sheet) {
        return passkey.answer(challenge(sheet));
    }

    private ResultActions review(UUID sheet) throws Exception {
        return mockMvc.perform(get("/sheets/{id}/review", sheet).with(LogIn.as(theatre.supervisor())));
    }

    private ResultActions sign(UUID sheet, String answer) throws Exception {
        return send(sheet, hash(sheet), "", answer);
    }

    private ResultActions send(UUID sheet, String hash, String password, String answer) throws Exception {
        return mockMvc.perform(post("/sheets/{id}/sign", sheet)
                .param("hash", hash)
                .param("password", password)
                .param("assertion", answer)
                .with(LogIn.as(theatre.supervisor()))
                .with(csrf()));
    }

    private SignedSheet signAndRead(UUID sheet) throws Exception {
        sign(sheet, answer(sheet)).andExpect(status().is3xxRedirection());
        return record(sheet);
    }

    private SignedSheet record(UUID sheet) {
        return theatre.organisation().in(() -> signedSheets.ofSheet(sheet)).orElseThrow();
    }

    private Optional<Assertion> kept(SignedSheet signed) {
        return theatre.organisation().in(() -> assertions.of(LeafKind.SIGNATURE, signed.id()));
    }

    private String leaf(SignedSheet signed) {
        UUID assertion = theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("select id from signature_assertion where record_id = :record")
                                .param("record", signed.id())
                                .query(UUID.class)
                                .single()));
        return theatre.organisation()
                .in(() -> ledger.find(LeafKind.ASSERTION, assertion))
                .orElseThrow()
                .entry();
    }

    private void assertUnsigned(UUID sheet) {
        assertThat(count("signed_sheet", "sheet_id", sheet)).isZero();
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }

    private int count(String table, String column, UUID id) {
        return theatre.organisation()
                .in(() -> transaction.execute(
                        status -> jdbc.sql("select count(*) from " + table + " where " + column + " = :id")
                                .param("id", id)
                                .query(Integer.class)
                                .single()));
    }

    private static CredentialClaim claim(SignedContent content) {
        return new CredentialClaim(content.reviewedHash(), content.credential());
    }
}
