package org.scrubline.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.ledger.leaf.RecordRows;
import org.scrubline.ledger.merkle.MerkleHash;
import org.scrubline.people.People;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Role;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.transaction.IllegalTransactionStateException;
import org.springframework.transaction.support.TransactionTemplate;

@ScrublineTest
class LedgerTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    People people;

    @Autowired
    LedgerStore store;

    @Autowired
    Ledger ledger;

    @Autowired
    TransactionTemplate transaction;

    TestOrganisations.TestOrganisation organisation;
    UUID trainee;

    @BeforeEach
    void open() {
        organisation = organisations.open();
        trainee = organisation.joinNew("Mira Olsen", Role.TRAINEE).personId();
    }

    @Test
    void leavesAreNumberedFromNoughtAndEveryCompleteSubtreeHasItsHash() {
        for (int cases = 1; cases <= 5; cases++) {
            int declared = cases;
            organisation.in(() -> {
                people.declarePriorExperience(trainee, "TRAB", declared);
                return true;
            });
        }
        organisation.in(() -> transaction.execute(status -> {
            assertThat(store.size()).isEqualTo(5);
            byte[] first = MerkleHash.node(store.hash(0, 0), store.hash(0, 1));
            byte[] second = MerkleHash.node(store.hash(0, 2), store.hash(0, 3));
            assertThat(store.hash(1, 0)).isEqualTo(first);
            assertThat(store.hash(1, 1)).isEqualTo(second);
            assertThat(store.hash(2, 0)).isEqualTo(MerkleHash.node(first, second));
            return true;
        }));
    }

    @Test
    void anEntryHoldsTheHashOfTheRowsInUtcAndWithoutEmptyColumns() {
        RecordRows rows = RecordRows.of(java.util.Map.of(
                "b", java.util.List.of("{\"n\": 2, \"empty\": null}", "{\"n\": 1}"), "none", java.util.List.of()));
        assertThat(rows.hashes())
                .containsOnlyKeys("b")
                .containsEntry("b", CanonicalJson.sha256("[{\"n\":1},{\"n\":2}]"));
    }

    @Test
    void aLeafNeedsATransactionAndARow() {
        assertThatThrownBy(() -> organisation.in(() -> ledger.append(LeafKind.REMARK, UUID.randomUUID())))
                .isInstanceOf(IllegalTransactionStateException.class);
        assertThatThrownBy(() -> organisation.in(
                        () -> transaction.execute(status -> ledger.append(LeafKind.REMARK, UUID.randomUUID()))))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageContaining("no row");
    }
}
