"""Linear algebra has one thread here and as many as before elsewhere: threadpoolctl tells."""

from threadpoolctl import threadpool_info, threadpool_limits

from yardfast.statics.one_thread import in_one_thread


def threads():
    return {pool["num_threads"] for pool in threadpool_info() if pool["user_api"] == "blas"}


def test_what_is_worked_here_has_one_thread_and_the_caller_keeps_theirs(monkeypatch):
    monkeypatch.delenv("OPENBLAS_NUM_THREADS", raising=False)
    with threadpool_limits(2, user_api="blas"):
        assert in_one_thread(threads)() == {1}
        assert threads() == {2}
