package org.scrubline.signoff;

import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Role;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.signoff.VersionSigning.Said;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Countersigning and answering, one transaction each. Whoever calls has recognised the signer. */
@Service
@Transactional
class VersionSigningDesk {

    private final SignedRecords records;
    private final SignedSheetQueries sheets;
    private final CountersignAccess access;
    private final VersionSignatureStore store;
    private final RecordHistoryQueries history;
    private final VersionRules rules;
    private final MessageSource messages;
    private final SignedEvidence evidence;
    private final Clock clock;

    VersionSigningDesk(
            SignedRecords records,
            SignedSheetQueries sheets,
            CountersignAccess access,
            VersionSignatureStore store,
            RecordHistoryQueries history,
            VersionRules rules,
            MessageSource messages,
            SignedEvidence evidence,
            Clock clock) {
        this.records = records;
        this.sheets = sheets;
        this.access = access;
        this.store = store;
        this.history = history;
        this.rules = rules;
        this.messages = messages;
        this.evidence = evidence;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    public List<VersionSignature> of(SignedIn who, UUID record) {
        return store.of(records.read(who, record).id());
    }

    @Transactional(readOnly = true)
    public Set<RecordEvent> mayFollow(SignedIn who, SignedSheet version) {
        RecordState state = history.state(version.sheetId());
        Set<RecordEvent> may = EnumSet.noneOf(RecordEvent.class);
        rules.about(who, version).stream()
                .filter(event -> state.versions() == version.versionNo() && state.allows(event))
                .filter(event -> rules.authority(who, event, version).isEmpty())
                .forEach(may::add);
        return may;
    }

    /** The version, for whoever may read it or might have countersigned it. */
    @Transactional(readOnly = true)
    public SignedSheet recognise(SignedIn who, UUID record) {
        return sheets.byId(record)
                .filter(version -> access.mightCountersign(who, version))
                .orElseGet(() -> records.read(who, record));
    }

    /**
     * Of many at once one signs; the others wait for the lock and are answered with its signature.
     *
     * @param how null where nobody was asked
     */
    public Attempt<VersionSignature> sign(SignedIn who, Said said, @Nullable Recognised how) {
        SignedSheet version = recognise(who, said.record());
        if (!version.contentHash().equals(said.contentHash())) {
            throw stale("/signed/" + version.id(), said.contentHash(), version.contentHash());
        }
        history.lock(version.sheetId());
        Optional<VersionSignature> first = store.of(version.id()).stream()
                .filter(signature -> signature.event() == said.event())
                .filter(signature -> signature.signerId().equals(who.personId()))
                .findFirst();
        if (first.isPresent()) {
            return Attempt.done(first.get());
        }
        RecordState state = history.state(version.sheetId());
        if (state.versions() != version.versionNo()) {
            throw stale("/sheets/" + version.sheetId() + "/signed", said.contentHash(), "–");
        }
        return rules.against(who, said, version, state)
                .map(Attempt::<VersionSignature>refused)
                .orElseGet(() -> Attempt.done(keep(who, said, version, how)));
    }

    private VersionSignature keep(SignedIn who, Said said, SignedSheet version, @Nullable Recognised how) {
        VersionSignatureContent content = content(who, said, version, how);
        SignedEvidence.requireIntended(how, Intent.of(content), "/signed/" + version.id());
        VersionSignature signature = content.signature();
        store.insert(signature);
        boolean second = said.event().parties().contains(RecordParty.SECOND_SUPERVISOR);
        evidence.fix(second ? LeafKind.COUNTERSIGNATURE : LeafKind.ACKNOWLEDGEMENT, signature.id(), how);
        return signature;
    }

    private VersionSignatureContent content(SignedIn who, Said said, SignedSheet version, @Nullable Recognised how) {
        String meaning = "signoff.meaning."
                + said.event().name().toLowerCase(Locale.ROOT).replace('_', '-');
        Role role = said.event().parties().contains(RecordParty.TRAINEE) ? Role.TRAINEE : Role.SUPERVISOR;
        return new VersionSignatureContent(
                VersionSignatureContent.SCHEMA,
                said.event(),
                new VersionSignatureContent.SignedVersion(
                        version.id(), version.sheetId(), version.versionNo(), version.contentHash()),
                said.words(),
                new SheetContent.Signer(
                        who.personId(),
                        who.printedName(),
                        role.name(),
                        meaning,
                        messages.getMessage(meaning, null, Locale.ENGLISH)),
                clock.instant().truncatedTo(ChronoUnit.MILLIS),
                version.signedZone(),
                how == null ? null : how.used());
    }

    private static StaleData stale(String back, String shown, String stored) {
        return new StaleData(back, List.of(new StaleData.Line("SHA-256", shown, stored)));
    }
}
