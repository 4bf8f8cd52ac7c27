package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.containsString;
import static org.scrubline.signoff.RecordEvent.ACKNOWLEDGED;
import static org.scrubline.signoff.RecordEvent.COUNTERSIGNED;
import static org.scrubline.signoff.VersionFixture.answer;
import static org.scrubline.signoff.VersionFixture.refusals;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.redirectedUrlPattern;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import com.jayway.jsonpath.JsonPath;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Assertion;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Credential;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.Versions.Signature;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** Everything that is signed about a record, with a passkey: its challenge is the hash of what is said. */
@ScrublineTest
class StatementPasskeyTests {

    private static final String WHY = "This case was another trainee’s case.";

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    RecordFixture acts;

    @Autowired
    Voids voids;

    @Autowired
    Contests contests;

    @Autowired
    LateReleases releases;

    @Autowired
    Passkeys passkeys;

    @Autowired
    Assertions assertions;

    @Autowired
    Clock clock;

    Theatre theatre;
    SignedSheet signed;

    @BeforeEach
    void signASheet() {
        theatre = sheetFixture.theatre(organisations);
        signed = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(2)));
    }

    @Test
    void aTraineeSignsHavingReadItAndTheSignatureIsKept() {
        VersionSignature answer = versions.sign(
                        theatre, theatre.trainee(), ACKNOWLEDGED, signed, "Read.", key(theatre.trainee()))
                .orThrow();
        assertKept(
                LeafKind.ACKNOWLEDGEMENT,
                answer.id(),
                VersionSignatureContent.read(answer.content()).credential(),
                Intent.of(ACKNOWLEDGED, signed.id(), signed.contentHash(), "Read."));
    }

    @Test
    void aPasswordLeavesNoSignatureAndTheAnswerSaysSo() {
        VersionSignature answer = versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "Read.")
                .orThrow();
        assertThat(VersionSignatureContent.read(answer.content()).credential())
                .isEqualTo(new CredentialUsed(CredentialUsed.Kind.PASSWORD, null));
        assertThat(kept(LeafKind.ACKNOWLEDGEMENT, answer.id())).isNull();
    }

    @Test
    void theKeyOfSomebodyElseSignsNothing() {
        SoftwarePasskey foreign = key(theatre.supervisor());
        assertThat(refusals(versions.sign(theatre, theatre.trainee(), ACKNOWLEDGED, signed, "", foreign)))
                .containsExactly("refusal.passkey.unknown");
        assertThat(versions.count(theatre, "acknowledgement", signed.id())).isZero();
    }

    @Test
    void anAnswerForAnotherRecordOtherWordsOrAnotherActSignsNothing() {
        SoftwarePasskey key = key(theatre.trainee());
        UUID record = signed.id();
        String hash = signed.contentHash();
        for (Intent other : List.of(
                Intent.of(ACKNOWLEDGED, record, "0".repeat(64), ""),
                Intent.of(ACKNOWLEDGED, UUID.randomUUID(), hash, ""),
                Intent.of(ACKNOWLEDGED, record, hash, "Other words."),
                Intent.of(COUNTERSIGNED, record, hash, ""))) {
            Credential answer = answer(key, other);
            assertThat(refusals(acknowledge(answer))).as(other.toString()).containsExactly("refusal.passkey.CHALLENGE");
        }
        assertThat(versions.count(theatre, "acknowledgement", record)).isZero();
        assertThat(refusals(acknowledge(answer(key, Intent.of(ACKNOWLEDGED, record, hash, "")))))
                .isEmpty();
    }

    @Test
    void anAnswerSentAgainLeadsToTheFirstAndCannotServeASecondRecord() {
        SoftwarePasskey key = key(theatre.trainee());
        Credential answer = answer(key, Intent.of(ACKNOWLEDGED, signed.id(), signed.contentHash(), ""));
        VersionSignature first = acknowledge(answer).orThrow();
        assertThat(acknowledge(answer).orThrow().id()).isEqualTo(first.id());
        SignedSheet second = fixture.signed(theatre, clock.instant().minus(Duration.ofHours(1)));
        VersionSigning.Said said = new VersionSigning.Said(ACKNOWLEDGED, second.id(), second.contentHash(), "");
        assertThat(refusals(theatre.organisation().in(() -> versions.sign(theatre.trainee(), said, answer))))
                .containsExactly("refusal.passkey.CHALLENGE");
    }

    @Test
    void aVoidIsAskedForAndConfirmedWithPasskeys() {
        SignedIn director = theatre.organisation().join("Ada Verney", Role.DIRECTOR);
        Intent asking = statement(RecordEvent.VOID_ASKED, null, null, VoidGround.WRONG_TRAINEE, WHY);
        Statement asked = theatre.organisation()
                .in(() -> voids.ask(
                        theatre.supervisor(),
                        signed.id(),
                        VoidGround.WRONG_TRAINEE,
                        signature(key(theatre.supervisor()), asking)))
                .orThrow();
        assertKept(LeafKind.VOID_REQUEST, asked.id(), asked.content().credential(), asking);

        Intent confirming = statement(RecordEvent.VOID_CONFIRMED, asked.hash(), null, null, "");
        Statement confirmed = theatre.organisation()
                .in(() -> voids.decide(director, signed.id(), true, signature(key(director), confirming)))
                .orThrow();
        assertKept(LeafKind.VOID_DECISION, confirmed.id(), confirmed.content().credential(), confirming);
    }

    @Test
    void aContestIsOpenedAndAnsweredWithPasskeys() {
        Intent opening = new Intent(
                Intent.SCHEMA,
                RecordEvent.CONTEST_OPENED,
                signed.id(),
                signed.contentHash(),
                null,
                null,
                null,
                List.of("TF09"),
                "I did this step alone.");
        Statement opened = theatre.organisation()
                .in(() -> contests.open(
                        theatre.trainee(), signed.id(), List.of("TF09"), signature(key(theatre.trainee()), opening)))
                .orThrow();
        assertKept(LeafKind.CONTEST, opened.id(), opened.content().credential(), opening);

        Intent replying =
                statement(RecordEvent.CONTEST_REPLIED, opened.hash(), null, null, "I held the flap for most of it.");
        Statement replied = theatre.organisation()
                .in(() -> contests.reply(
                        theatre.supervisor(), opened.id(), signature(key(theatre.supervisor()), replying)))
                .orThrow();
        assertKept(LeafKind.CONTEST_STEP, replied.id(), replied.content().credential(), replying);
    }

    @Test
    void whatAPasskeySignedAboutAnotherStateIsAConflictAndStoresNothing() {
        Intent aboutOldHash = new Intent(
                Intent.SCHEMA,
                RecordEvent.VOID_ASKED,
                signed.id(),
                "0".repeat(64),
                null,
                null,
                VoidGround.WRONG_TRAINEE,
                List.of(),
                WHY);
        SoftwarePasskey key = key(theatre.supervisor());
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> voids.ask(
                                theatre.supervisor(),
                                signed.id(),
                                VoidGround.WRONG_TRAINEE,
                                signature(key, aboutOldHash))))
                .isInstanceOf(StaleData.class);
        assertThat(versions.count(theatre, "void_request", signed.id())).isZero();
    }

    @Test
    void aLateSheetIsReleasedWithAPasskey() {
        SignedIn director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        UUID sheet = fixture.complete(theatre, clock.instant().minus(Duration.ofDays(15)));
        SoftwarePasskey key = key(director);
        Credential forAnother = answer(key, LateRelease.intent(UUID.randomUUID(), WHY));
        assertThat(refusals(theatre.organisation().in(() -> releases.release(director, sheet, WHY, forAnother))))
                .containsExactly("refusal.passkey.CHALLENGE");

        Intent intent = LateRelease.intent(sheet, WHY);
        LateRelease release = theatre.organisation()
                .in(() -> releases.release(director, sheet, WHY, answer(key, intent)))
                .orThrow();
        assertKept(LeafKind.LATE_RELEASE, release.id(), release.credential(), intent);
    }

    @Test
    void whoNeverAcceptedTheStatementAsksForNoVoid() {
        Theatre fresh = new Theatre(
                theatre.organisation(),
                theatre.organisation().joinNew("Ottilie Brannock", Role.DIRECTOR),
                theatre.trainee());
        assertThat(refusals(acts.askVoid(fresh, fresh.supervisor(), signed.id())))
                .containsExactly("signoff.refusal.statement");
        assertThat(versions.count(theatre, "void_request", signed.id())).isZero();
    }

    @Test
    void thePageAsksWhatToSignAndSendsTheAnswer() throws Exception {
        SoftwarePasskey key = key(theatre.trainee());
        mockMvc.perform(get("/signed/{id}/contest", signed.id()).with(LogIn.as(theatre.trainee())))
                .andExpect(content().string(containsString("data-passkey=\"sign\"")))
                .andExpect(content().string(containsString("value=\"" + signed.contentHash() + "\"")));
        String text = "I did this step alone, start to finish. ";
        String challenge = JsonPath.read(
                mockMvc.perform(contest("/signatures/intent", text))
                        .andExpect(status().isOk())
                        .andReturn()
                        .getResponse()
                        .getContentAsString(),
                "$.challenge");
        mockMvc.perform(contest("/signed/" + signed.id() + "/contest", text).param("assertion", key.answer(challenge)))
                .andExpect(redirectedUrlPattern("/contests/*"));
    }

    @Test
    void aFormThatNamesNothingIsToldSo() throws Exception {
        mockMvc.perform(post("/signatures/intent")
                        .param("act", "CONTEST_OPENED")
                        .param("record", "none")
                        .with(LogIn.as(theatre.trainee()))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent());
        mockMvc.perform(post("/signatures/intent")
                        .param("act", "no act")
                        .param("record", signed.id().toString())
                        .with(LogIn.as(theatre.trainee()))
                        .with(csrf()))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$").doesNotExist());
    }

    private MockHttpServletRequestBuilder contest(String path, String text) {
        return post(path)
                .param("act", "CONTEST_OPENED")
                .param("record", signed.id().toString())
                .param("hash", signed.contentHash())
                .param("answers", "")
                .param("steps", "TF09")
                .param("reason", text)
                .with(LogIn.as(theatre.trainee()))
                .with(csrf());
    }

    private Attempt<VersionSignature> acknowledge(Credential credential) {
        VersionSigning.Said said = new VersionSigning.Said(ACKNOWLEDGED, signed.id(), signed.contentHash(), "");
        return theatre.organisation().in(() -> versions.sign(theatre.trainee(), said, credential));
    }

    private Intent statement(
            RecordEvent act,
            @Nullable String answers,
            @Nullable UUID person,
            @Nullable VoidGround ground,
            String text) {
        return new Intent(
                Intent.SCHEMA, act, signed.id(), signed.contentHash(), answers, person, ground, List.of(), text);
    }

    private static Signature signature(SoftwarePasskey key, Intent intent) {
        return new Signature(intent.words(), answer(key, intent), intent.hash());
    }

    private SoftwarePasskey key(SignedIn who) {
        return SoftwarePasskey.of(who.accountId(), passkeys);
    }

    private void assertKept(LeafKind kind, UUID record, @Nullable CredentialUsed used, Intent intent) {
        Assertion kept = kept(kind, record);
        assertThat(kept).isNotNull();
        assertThat(used).isEqualTo(new CredentialUsed(CredentialUsed.Kind.PASSKEY, kept.hash()));
        assertThat(CanonicalJson.hashBytes(intent.hash())).isEqualTo(Base64Url.bytes(kept.challenge()));
    }

    private @Nullable Assertion kept(LeafKind kind, UUID record) {
        return theatre.organisation().in(() -> assertions.of(kind, record)).orElse(null);
    }
}
