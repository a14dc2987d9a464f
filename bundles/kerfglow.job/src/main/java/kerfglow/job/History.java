// SPDX-License-Identifier: Apache-2.0
package kerfglow.job;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Undo and redo over immutable states. Each step has the name that a person sees. Not for several threads.
 *
 * @param <S> the state
 */
public final class History<S> {
    /** Assumed: more steps than a person undoes one by one; states share what they have in common, so that steps are cheap. */
    private static final int MOST_STEPS = 1000;

    private record Step<S>(String name, S other) {
    }

    private final Deque<Step<S>> done = new ArrayDeque<>();
    private final Deque<Step<S>> undone = new ArrayDeque<>();
    private S present;
    private S saved;

    /** Begins with what is on disk. */
    public History(S start) {
        this(start, start);
    }

    /** Begins with something else than what is on disk. */
    public History(S start, S onDisk) {
        present = Objects.requireNonNull(start, "start");
        saved = Objects.requireNonNull(onDisk, "onDisk");
    }

    public S present() {
        return present;
    }

    /** A step; what was undone before is gone. Nothing happens when the state stays equal. */
    public void perform(String name, S next) {
        if (next.equals(present)) {
            return;
        }
        done.push(new Step<>(name, present));
        if (done.size() > MOST_STEPS) {
            done.removeLast();
        }
        undone.clear();
        present = next;
    }

    /** Changes the present without a step of its own, for what follows from a step and is no decision. */
    public void amend(UnaryOperator<S> change) {
        boolean asSaved = !isChanged();
        present = change.apply(present);
        if (asSaved) {
            saved = present;
        }
    }

    /** The name of the step that undo takes back. */
    public Optional<String> undoName() {
        return Optional.ofNullable(done.peek()).map(Step::name);
    }

    /** The name of the step that redo does again. */
    public Optional<String> redoName() {
        return Optional.ofNullable(undone.peek()).map(Step::name);
    }

    /** Takes the last step back; nothing happens when there is none. */
    public void undo() {
        turn(done, undone);
    }

    /** Does the step again that was taken back last; nothing happens when there is none. */
    public void redo() {
        turn(undone, done);
    }

    private void turn(Deque<Step<S>> from, Deque<Step<S>> to) {
        if (!from.isEmpty()) {
            Step<S> step = from.pop();
            to.push(new Step<>(step.name(), present));
            present = step.other();
        }
    }

    /** Changes every state, what can be undone and redone too. */
    public void changeAll(UnaryOperator<S> change) {
        for (Deque<Step<S>> steps : List.of(done, undone)) {
            List<Step<S>> changed = steps.stream().map(step -> new Step<>(step.name(), change.apply(step.other()))).toList();
            steps.clear();
            steps.addAll(changed);
        }
        boolean asSaved = !isChanged();
        present = change.apply(present);
        saved = asSaved ? present : change.apply(saved);
    }

    /** The present is on disk. */
    public void markSaved() {
        saved = present;
    }

    /** True when the present differs from what is on disk. */
    public boolean isChanged() {
        return saved != present && !present.equals(saved);
    }
}
