// SPDX-License-Identifier: Apache-2.0
package kerfglow.geometry;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The contacts of one wall. In a round shape of very many short edges every edge meets every other at the same disc; so that
 * such a drawing does not fill the memory, contacts that a few others beat are dropped once there are very many.
 */
final class ContactList {
    /** Real artwork has far fewer contacts on a wall; none is ever dropped there. */
    private static final int MANY = 512;
    /** In how many places of the wall the smallest disc is looked for, to find the few that beat the rest. */
    private static final int PLACES = 16;
    /** In how many places a contact must be beaten to be dropped. */
    private static final int ASKED = 8;

    private List<Contact> contacts = new ArrayList<>(2);
    private int dropAt = MANY;

    void add(Contact contact) {
        contacts.add(contact);
        if (contacts.size() >= dropAt) {
            dropBeaten();
            dropAt = Math.max(MANY, 2 * contacts.size());
        }
    }

    /** In the order of their starts. */
    List<Contact> sorted() {
        contacts.sort(Comparator.comparingDouble(contact -> contact.from));
        return contacts;
    }

    private void dropBeaten() {
        double from = contacts.stream().mapToDouble(contact -> contact.from).min().orElseThrow();
        double to = contacts.stream().mapToDouble(contact -> contact.to).max().orElseThrow();
        List<Contact> strong = new ArrayList<>();
        for (int i = 0; i < PLACES; i++) {
            double place = from + (i + 0.5) / PLACES * (to - from);
            contacts.stream().filter(contact -> contact.from <= place && contact.to >= place)
                    .min(Comparator.comparingDouble(contact -> contact.radius(place)))
                    .filter(contact -> !strong.contains(contact)).ifPresent(strong::add);
        }
        List<Contact> kept = new ArrayList<>(strong);
        for (Contact contact : contacts) {
            if (!strong.contains(contact) && !isBeaten(contact, strong)) {
                kept.add(contact);
            }
        }
        contacts = kept;
    }

    private static boolean isBeaten(Contact contact, List<Contact> strong) {
        for (int i = 0; i < ASKED; i++) {
            double place = contact.from + (i + 0.5) / ASKED * (contact.to - contact.from);
            double radius = contact.radius(place);
            boolean beaten = false;
            for (Contact other : strong) {
                beaten |= other.from <= place && other.to >= place && other.radius(place) <= radius;
            }
            if (!beaten) {
                return false;
            }
        }
        return true;
    }
}
