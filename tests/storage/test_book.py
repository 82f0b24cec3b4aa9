from ledger.views.lots import find_lot
def test_x(shop, run, frozen):
    print(run("stock").stdout, run("lot","show",shop.olive).stdout)
    assert 0
